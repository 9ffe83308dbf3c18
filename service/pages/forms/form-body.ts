import type { Context } from "hono";
import type { Typed } from "./form-problems.ts";

/** Fields of a posted form as text; files are left out, and of repeated fields the last one counts. */
export async function typedForm(c: Context): Promise<Typed> {
  const body = await c.req.parseBody();
  return Object.fromEntries(
    Object.entries(body).flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
}
