import { totalHarm } from "../harm/course.ts";
import type { HarmByTerm } from "../harm/term.ts";
import { sharedOut } from "./shared-out.ts";
import type { Standing } from "./standing.ts";

/** Harm by term and day of being at home or away on that day. */
export interface DayCosts {
  readonly home: HarmByTerm;
  readonly away: HarmByTerm;
}

/**
 * Harm of each day at home and of each day away, so that days can be chosen one by one. What a spot does by itself
 * falls on its own day. Harm by way of water is what home costs beyond the other place, laid on the days whose
 * wetting brings it; what both places share is left out on both sides.
 */
export function dayCosts(home: Standing, away: Standing): DayCosts {
  const extra = (term: "wet-roots" | "wet-cold" | "wet-wound", weights: Float64Array) =>
    sharedOut(totalHarm({ byDay: home.wet[term] }) - totalHarm({ byDay: away.wet[term] }), weights);
  const dayCount = home.thirst.length;
  const pours = home.wait.byMorning[home.wait.best]! - away.wait.byMorning[away.wait.best]!;
  return {
    home: {
      ...home.bySpot,
      "wet-roots": extra("wet-roots", home.pass.weights.roots),
      "wet-cold": extra("wet-cold", home.pass.weights.roots),
      "wet-wound": extra("wet-wound", home.pass.weights.wound),
      thirst: sharedOut(pours, home.pass.weights.roots),
    },
    away: { ...away.bySpot, thirst: new Float64Array(dayCount) },
  };
}

/** All terms of each day together. */
export function sumByDay(harm: HarmByTerm, dayCount: number): Float64Array {
  const sum = new Float64Array(dayCount);
  for (const column of Object.values(harm)) for (let d = 0; d < dayCount; d++) sum[d]! += column[d]!;
  return sum;
}
