import { HOUR_MS } from "../../weather/weather.ts";
import type { Course } from "../harm/course.ts";

/** Wetting, as a share of capacity, from which more makes no odds. Chosen by us. */
const SOAKED_FRAC = 0.3;
/** The same for fresh cuts. */
const SOAKED_WOUND_FRAC = 0.06;

/**
 * How much of the harm of water belongs to the wetting of each day: harm is felt days after the rain that caused it,
 * yet it is the rain that a carry avoids. Weights by plan day, mean of the cloud, not normalised.
 */
export function wettingWeights(course: Course): { roots: Float64Array; wound: Float64Array } {
  const { now, trajectory, days } = course;
  const { size, wettedMl } = trajectory;
  const { weightFrac } = now.cloud;
  const capacityMl = now.inVessel.hold.capacityMl;
  const roots = new Float64Array(days.length);
  const wound = new Float64Array(days.length);
  for (const [d, day] of days.entries()) {
    const open = openShare(course, (day.fromHour + day.toHour) / 2);
    for (let i = 0; i < size; i++) {
      let wetted = 0;
      for (let hour = day.fromHour; hour < day.toHour; hour++) wetted += wettedMl[hour * size + i]!;
      if (wetted === 0) continue;
      roots[d]! += weightFrac[i]! * Math.min(1, wetted / (SOAKED_FRAC * capacityMl));
      wound[d]! += weightFrac[i]! * open * Math.min(1, wetted / (SOAKED_WOUND_FRAC * capacityMl));
    }
  }
  return { roots, wound };
}

/** Share of the cuts that are still open at an hour, told from the end of the dry time. */
function openShare({ now, startUtcMs }: Course, hour: number): number {
  const care = now.aftercare;
  if (care === null || care.stage !== "dry") return 0;
  const lastHour = (care.dryUntilUtcMs - startUtcMs) / HOUR_MS;
  return Math.max(0, 1 - hour / Math.max(lastHour, 1)) * (1 - care.healedFrac);
}

/** A total shared out by weights; by even shares when no day has a weight. */
export function sharedOut(total: number, weights: Float64Array): Float64Array {
  let sum = 0;
  for (const weight of weights) sum += weight;
  return weights.map((weight) => (sum > 0 ? (total * weight) / sum : total / weights.length));
}
