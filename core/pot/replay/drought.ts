import { refillFracNow, usableLeftFrac } from "../../plan/harm/refill-point.ts";
import { drynessOf, standsDays } from "../../plan/harm/thirst.ts";
import type { PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";

/**
 * Counts a day that is over towards the drought of each version of a pot, as the harm of thirst does by the hour: a
 * plant that has been dry for weeks is nearer to harm than one that is dry since this morning.
 */
export function countDrought(state: PotState, { values }: Pick<ReplayContext, "values">): void {
  const { planting, particles, rest } = state;
  const droughtFrac = particles?.droughtFrac;
  if (planting === null || particles === null || droughtFrac === undefined) return;
  const now = { values, rest, inVessel: planting.inVessel };
  const refillFrac = refillFracNow(now);
  const stands = standsDays(now);
  const { capacityMl } = planting.inVessel.hold;
  const { capacityFactor, surfaceMl, bodyMl } = particles;
  for (let k = 0; k < particles.size; k++) {
    const factor = capacityFactor[k]!;
    const waterMl = factor * capacityMl - surfaceMl[k]! - bodyMl[k]!;
    const left = usableLeftFrac(now, { waterMl, capacityFactor: factor });
    if (left >= refillFrac) droughtFrac[k] = 0;
    else droughtFrac[k]! += drynessOf(left, refillFrac) ** 2 / stands;
  }
}
