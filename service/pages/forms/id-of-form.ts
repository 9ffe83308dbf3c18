import { createHash } from "node:crypto";
import type { Typed } from "./form-problems.ts";
import { newFormId } from "./new-form-id.ts";

/** The form's own id, so that a form sent twice makes one thing; a new one where it has none. */
export function idOfForm(typed: Typed): string {
  return /^[\w-]{8,80}$/.test(typed.formId ?? "") ? typed.formId! : newFormId();
}

/** Fields that may differ between two sendings of the same entry. */
const NOT_CONTENT = new Set(["happenedAtUtcMs"]);

/**
 * Id for what a form says: the same form sent twice is one entry, and a form gone back to and filled in anew is another.
 */
export function idOfEntry(typed: Typed): string {
  const content = Object.entries(typed).filter(([name]) => !NOT_CONTENT.has(name));
  const said = createHash("sha256").update(JSON.stringify(content.sort())).digest("hex").slice(0, 12);
  return `log.${idOfForm(typed)}.${said}`;
}
