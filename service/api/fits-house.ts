import type { Collection } from "../../core/plan/collection.ts";
import type { Problem } from "../../core/problem.ts";
import { caseRules } from "../case/case-rules.ts";

type ListName = "spots" | "mixes" | "pots" | "ownComponents" | "ownGroups";

/** What the rules between fields say of one thing beside all that stands at the site; paths begin inside the thing. */
export function problemsBeside(
  collection: Collection,
  { list, value }: { list: ListName; value: { readonly id: string } },
): Problem[] {
  const others = (collection[list] ?? []).filter(({ id }) => id !== value.id);
  const raw = { collection: { ...collection, [list]: [value, ...others] }, journal: [] };
  return problemsUnder(raw, ["collection", list, 0]);
}

/** The same of a journal entry as it was written. */
export function problemsOfEntry(collection: Collection, written: unknown): Problem[] {
  return problemsUnder({ collection, journal: [written] }, ["journal", 0]);
}

function problemsUnder(raw: unknown, start: readonly (string | number)[]): Problem[] {
  return caseRules(raw)
    .filter(({ path }) => start.every((step, index) => path[index] === step))
    .map((problem) => ({ ...problem, path: problem.path.slice(start.length) }));
}
