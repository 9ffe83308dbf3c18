import { HOUR_MS } from "../../weather/weather.ts";
import type { Course } from "../harm/course.ts";
import { refillFracNow } from "../harm/refill-point.ts";
import { workColumns } from "../harm/work-columns.ts";

/** Wetting, as a share of capacity, from which more makes no odds to roots. Chosen by us. */
const SOAKED_FRAC = 0.3;
/** The same for fresh cuts. */
const SOAKED_WOUND_FRAC = 0.06;
/** A pot that lacks less than this share of what it holds is full. */
const FULL_WITHIN_FRAC = 0.05;

/** What the water of a course does day by day, means of the cloud by plan day. */
export interface WaterPass {
  /** Share of the water missing now that rain has brought by the end of the day. */
  readonly relief: Float64Array;
  /** Used by the end of the day, in pours: 1 is all that the pot holds between full and its refill point. */
  readonly used: Float64Array;
  /**
   * How much of the harm of water belongs to the wetting of each day, for roots and for fresh cuts: harm is felt days
   * after the rain that caused it, yet it is the rain that a carry avoids. Not normalised.
   */
  readonly weights: { readonly roots: Float64Array; readonly wound: Float64Array };
}

/** One pass over a course without pours. */
export function waterPass(course: Course): WaterPass {
  const { now, trajectory, days } = course;
  const { size, wettedMl, drainedMl, waterMl } = trajectory;
  const { weightFrac, capacityFactor } = now.cloud;
  const { capacityMl, usableMl } = now.inVessel.hold;
  const pourMl = usableMl * Math.max(0.1, 1 - refillFracNow(now));
  const column = () => new Float64Array(days.length);
  const found = { relief: column(), used: column(), weights: { roots: column(), wound: column() } };
  const [rainMl, netMl, today] = workColumns(size) as [Float64Array, Float64Array, Float64Array];
  for (let k = 0; k < size; k++) {
    rainMl[k] = 0;
    netMl[k] = now.cloud.waterMl[k]! + now.cloud.saucerMl[k]!;
  }
  for (const [d, day] of days.entries()) {
    today.fill(0);
    for (let i = day.fromHour * size; i < day.toHour * size; i += size) {
      for (let k = 0; k < size; k++) {
        today[k]! += wettedMl[i + k]!;
        netMl[k]! -= drainedMl[i + k]!;
      }
    }
    const open = openShare(course, (day.fromHour + day.toHour) / 2);
    const last = (day.toHour - 1) * size;
    for (let k = 0; k < size; k++) {
      const weight = weightFrac[k]!;
      const fullMl = capacityMl * capacityFactor[k]!;
      const missingMl = Math.max(fullMl - now.cloud.waterMl[k]!, FULL_WITHIN_FRAC * fullMl);
      rainMl[k]! += today[k]!;
      netMl[k]! += today[k]!;
      const usedMl = Math.max(0, netMl[k]! - (last < 0 ? netMl[k]! : waterMl[last + k]!));
      found.relief[d]! += weight * Math.min(1, rainMl[k]! / missingMl);
      found.used[d]! += weight * Math.min(1, usedMl / (pourMl * capacityFactor[k]!));
      found.weights.roots[d]! += weight * Math.min(1, today[k]! / (SOAKED_FRAC * capacityMl));
      found.weights.wound[d]! += weight * open * Math.min(1, today[k]! / (SOAKED_WOUND_FRAC * capacityMl));
    }
  }
  return found;
}

/** Share of the cuts that are still open at an hour, told from the end of the dry time. */
function openShare({ now, startUtcMs }: Course, hour: number): number {
  const care = now.aftercare;
  if (care === null || care.stage !== "dry") return 0;
  const lastHour = (care.dryUntilUtcMs - startUtcMs) / HOUR_MS;
  return Math.max(0, 1 - hour / Math.max(lastHour, 1)) * (1 - care.healedFrac);
}
