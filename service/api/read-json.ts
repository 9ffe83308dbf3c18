import type { Context } from "hono";
import type { Refusal } from "../problem-answer.ts";

/** Deepest nesting of lists and objects in a body; the deepest that any schema needs is a third of it. */
const DEEPEST = 32;

type JsonRead =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly refusal: Refusal };

/** The body as JSON, or why it cannot be. */
export async function readJson(c: Context): Promise<JsonRead> {
  const type = c.req.header("content-type")?.split(";")[0]?.trim().toLowerCase();
  if (type !== "application/json") return refused(415, "not-json", "Send the body as application/json.");
  const text = await c.req.text();
  if (depthOf(text) > DEEPEST)
    return refused(400, "too-deep", `The JSON is nested more than ${DEEPEST} deep. Flatten it.`);
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return refused(400, "not-json", "The body is not JSON. Check brackets, commas and quotes.");
  }
}

function refused(status: 400 | 415, code: string, detail: string): JsonRead {
  return { ok: false, refusal: { status, code, detail } };
}

/** Open brackets at the deepest place; those inside texts do not count. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  for (const [token] of text.matchAll(/"(?:[^"\\]|\\.)*"|[[{\]}]/gs)) {
    if (token === "[" || token === "{") deepest = Math.max(deepest, ++depth);
    else if (token === "]" || token === "}") depth--;
  }
  return deepest;
}
