import type { RootWork } from "../../../core/journal/entry.ts";

/** What can be done to roots, mildest first. */
export const ROOT_WORKS = [
  "undisturbed",
  "teased",
  "pruned",
  "bare-root",
  "rot-surgery",
  "cutting",
] as const satisfies RootWork[];
