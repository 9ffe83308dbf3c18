import type { SpotForcing } from "../site/forcing.ts";
import type { PotNow } from "./pot-now.ts";
import type { Trajectory } from "./trajectory.ts";

/** Hours without air at the base, counted by temperature, against the two marks. */
export interface WetBaseOutlook {
  /** Mean of the cloud: plain hours, and hours as they count. */
  readonly hours: number;
  readonly countedHours: number;
  /** Share of the cloud in which an unbroken stretch passes the mark. */
  readonly pastCautionFrac: number;
  readonly pastHighFrac: number;
}

/**
 * Marks for an unbroken stretch, counted hours. Oxygen in flooded soil is gone after a day; two days of flooding made
 * resistant roots fall to rot. [BLAKER1981 for 48 h; 24 h common practice]
 */
export const WET_BASE_MARKS_H = { caution: 24, high: 48 } as const;

/** Mix warmer than this uses up its oxygen in the full count; cooler mix takes twice as long. Common practice. */
const WARM_C = 18;
const COOL_COUNT = 0.5;
/** In roots at rest in the cold the wait is no shorter: rot finds them idle. Chosen by us. [DIMMITT2012B] */
const IDLE_BELOW_C = 12;

/** How long the base is likely to stand without air. */
export function wetBaseOutlook(of: {
  now: PotNow;
  course: Trajectory;
  forcing: SpotForcing;
}): WetBaseOutlook {
  const { now, course, forcing } = of;
  const { size, hourCount, wetBase } = course;
  const { weightFrac } = now.cloud;
  const own = forcing.memberCount === size ? 1 : 0;
  const sums = { hours: 0, countedHours: 0, pastCautionFrac: 0, pastHighFrac: 0 };
  for (let k = 0; k < size; k++) {
    let run = 0;
    let longest = 0;
    for (let hour = 0; hour < hourCount; hour++) {
      if (wetBase[hour * size + k] === 0) {
        run = 0;
        continue;
      }
      const tempC = forcing.tempC[hour * forcing.memberCount + own * k]!;
      const count = hourCounts(tempC, now.rest.restingShareFrac);
      run += count;
      longest = Math.max(longest, run);
      sums.hours += weightFrac[k]!;
      sums.countedHours += count * weightFrac[k]!;
    }
    if (longest >= WET_BASE_MARKS_H.caution) sums.pastCautionFrac += weightFrac[k]!;
    if (longest >= WET_BASE_MARKS_H.high) sums.pastHighFrac += weightFrac[k]!;
  }
  return sums;
}

/** How much an hour without air counts at a temperature. */
export function hourCounts(tempC: number, restingShareFrac: number): number {
  if (tempC >= WARM_C) return 1;
  if (tempC < IDLE_BELOW_C) return COOL_COUNT + (1 - COOL_COUNT) * restingShareFrac;
  return COOL_COUNT;
}
