import type { Collection } from "../../../core/plan/collection.ts";

/** Steps to a first brief, in order. */
export type BeginStep = "site" | "spots" | "mix" | "pot";

export const BEGIN_STEPS: readonly BeginStep[] = ["site", "spots", "mix", "pot"];

/** The first thing that is still needed for a brief; null when there is everything. */
export function missingStep(collection: Collection | null): BeginStep | null {
  if (!collection) return "site";
  if (collection.spots.length === 0) return "spots";
  if (collection.mixes.length === 0) return "mix";
  return collection.pots.length === 0 ? "pot" : null;
}
