import { HOUR_MS } from "../../weather/weather.ts";
import type { Course, HarmTally } from "./course.ts";
import { workColumns } from "./work-columns.ts";

/** Harm of soaking roots that were cut this hour. Chosen by us: a wet cut is the common way to lose a succulent. */
export const FRESH_CUT_HARM = 0.3;
/** Wetting, as a share of capacity, that is as bad as a soaking; even a little is to be kept off. Chosen by us. */
export const FULL_WETTING_FRAC = 0.06;

/**
 * Harm of wetting roots before their cuts have closed: free water on the wound stops it closing and lets rot in.
 * Falls as the cut heals and is nothing from the end of the dry time.
 */
export function wetWound(course: Course, into: HarmTally): void {
  const { now, trajectory, dayOfHour } = course;
  const care = now.aftercare;
  if (care === null || care.stage !== "dry") return;
  const { size, wettedMl } = trajectory;
  const { weightFrac } = now.cloud;
  const lastHour = Math.ceil((care.dryUntilUtcMs - course.startUtcMs) / HOUR_MS);
  const fullMl = FULL_WETTING_FRAC * now.inVessel.hold.capacityMl;
  const worst = workColumns(size)[0]!.fill(0);
  for (let hour = 0; hour < Math.min(trajectory.hourCount, lastHour); hour++) {
    const open = (1 - care.healedFrac) * (1 - hour / lastHour);
    for (let i = 0; i < size; i++) {
      const wetted = wettedMl[hour * size + i]!;
      if (wetted <= 0) continue;
      const level = FRESH_CUT_HARM * open * Math.min(1, wetted / fullMl);
      const harm = level - worst[i]!;
      if (harm <= 0) continue;
      worst[i] = level;
      into.byParticle[i]! += harm;
      into.byDay[dayOfHour[hour]!]! += weightFrac[i]! * harm;
    }
  }
}
