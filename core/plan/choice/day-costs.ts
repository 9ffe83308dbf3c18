import type { SpotDays } from "../days/spot-days.ts";
import { totalHarm } from "../harm/course.ts";
import type { HarmByTerm, WetTerm } from "../harm/term.ts";
import { COLD_ROOTS_C } from "../harm/wet-roots.ts";
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
  const extra = (term: WetTerm, weights: Float64Array) => sharedOut(extraAtHome(home, away, term), weights);
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

/**
 * Harm of a water's term that home costs beyond the other place. Where home costs less, as a wet pot dries sooner in the
 * open, that counts by the share of nights there in which roots are not cold: a wet pot is put out to dry while nights
 * are mild, and the colder they are the less. Common practice.
 */
function extraAtHome(home: Standing, away: Standing, term: WetTerm): number {
  if (term === "wet-cold") return extraOfWetCold(home, away);
  const extra = totalHarm({ byDay: home.wet[term] }) - totalHarm({ byDay: away.wet[term] });
  return extra < 0 ? extra * mildNightFrac(home.at) : extra;
}

/** By its nights, and by what rain adds there; that it dries sooner is no reason to stand in colder ones. */
function extraOfWetCold(home: Standing, away: Standing): number {
  const [atHome, whereAway] = [home, away].map(({ wet }) => totalHarm({ byDay: wet["wet-cold"] }));
  const there = home.wetColdThere ?? whereAway!;
  return Math.max(0, atHome! - there) + Math.max(0, there - whereAway!);
}

function mildNightFrac({ nightMinC }: SpotDays): number {
  let mild = 0;
  for (const minC of nightMinC) if (minC >= COLD_ROOTS_C) mild++;
  return mild / nightMinC.length;
}

/** All terms of each day together. */
export function sumByDay(harm: HarmByTerm, dayCount: number): Float64Array {
  const sum = new Float64Array(dayCount);
  for (const column of Object.values(harm)) for (let d = 0; d < dayCount; d++) sum[d]! += column[d]!;
  return sum;
}
