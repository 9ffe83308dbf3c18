import type { Context } from "hono";
import type { Refusal } from "../problem-answer.ts";

/** The body as bytes, where it says that it is of one of the types. */
export async function readBytes(
  c: Context,
  types: readonly string[],
): Promise<{ readonly value: Uint8Array } | Refusal> {
  const type = c.req.header("content-type")?.split(";")[0]?.trim().toLowerCase() ?? "";
  if (!types.includes(type))
    return { status: 415, code: "other-type", detail: `Send the file itself as ${types.join(" or ")}.` };
  return { value: new Uint8Array(await c.req.arrayBuffer()) };
}
