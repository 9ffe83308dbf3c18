import { randomUUID } from "node:crypto";
import type { Typed } from "./form-problems.ts";

/** The form's own id, so that a form sent twice makes one thing; a new one where it has none. */
export function idOfForm(typed: Typed): string {
  return /^[\w-]{8,80}$/.test(typed.formId ?? "") ? typed.formId! : randomUUID();
}
