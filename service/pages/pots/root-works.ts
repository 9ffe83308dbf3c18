import type { RootWork } from "../../../core/journal/entry.ts";
import { capitalised, type Words } from "../../words/words.ts";
import type { Option } from "../forms/fields.tsx";

/** What can be done to roots, mildest first. */
export const ROOT_WORKS = [
  "undisturbed",
  "teased",
  "pruned",
  "bare-root",
  "rot-surgery",
  "cutting",
] as const satisfies RootWork[];

/** The same to choose from. */
export function rootWorkOptions({ say, locale }: Words): Option[] {
  return ROOT_WORKS.map((value) => ({ value, text: capitalised(say(`roots.${value}`), locale) }));
}
