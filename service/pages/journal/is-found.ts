import { bare } from "../forms/name-problems.ts";

/** Whether a line holds every word that is looked for, in any order, however it is spaced or capitalised. */
export function isFound(line: string, search: string): boolean {
  const held = bare(line);
  return bare(search)
    .split(" ")
    .every((word) => held.includes(word));
}
