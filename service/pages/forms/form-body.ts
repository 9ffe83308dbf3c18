import type { Context } from "hono";
import type { Typed } from "./form-problems.ts";

/** A body that says it is a form and cannot be read as one. */
export class UnreadableForm extends Error {}

/** Fields of a posted form as text; files are left out, and of repeated fields the last one counts. */
export async function typedForm(c: Context): Promise<Typed> {
  const body = await bodyOf(c);
  return Object.fromEntries(
    Object.entries(body).flatMap(([name, value]) => (typeof value === "string" ? [[name, value]] : [])),
  );
}

/** Every value of a field that may stand in the form more than once. */
export async function fieldTexts(c: Context, name: string): Promise<string[]> {
  const body = await bodyOf(c, { all: true });
  const given = body[name];
  const values = Array.isArray(given) ? given : [given];
  return values.filter((value): value is string => typeof value === "string");
}

/** A file of the form; null where none was chosen. */
export async function fieldFile(c: Context, name: string): Promise<File | null> {
  const given = (await bodyOf(c))[name];
  return given instanceof File && given.size > 0 ? given : null;
}

/** @throws UnreadableForm */
async function bodyOf(c: Context, options: { all?: boolean } = {}) {
  try {
    return await c.req.parseBody(options);
  } catch (error) {
    if (error instanceof TypeError) throw new UnreadableForm(error.message);
    throw error;
  }
}
