import type { Context } from "hono";
import type { Typed } from "./form-problems.ts";

/** Fields of a posted form as text; files are left out, and of repeated fields the last one counts. */
export async function typedForm(c: Context): Promise<Typed> {
  const body = await c.req.parseBody();
  return Object.fromEntries(
    Object.entries(body).flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
}

/** Every value of a field that may stand in the form more than once. */
export async function fieldTexts(c: Context, name: string): Promise<string[]> {
  const body = await c.req.parseBody({ all: true });
  const given = body[name];
  const values = Array.isArray(given) ? given : [given];
  return values.filter((value): value is string => typeof value === "string");
}

/** A file of the form; null where none was chosen. */
export async function fieldFile(c: Context, name: string): Promise<File | null> {
  const given = (await c.req.parseBody())[name];
  return given instanceof File && given.size > 0 ? given : null;
}
