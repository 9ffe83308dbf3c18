import type { PotStudy } from "../choice/pot-study.ts";
import { refillFracNow, usableLeftFrac } from "../harm/refill-point.ts";
import { meanOf } from "../rows/spread-of.ts";
import { mayBeBlocked } from "./blocked-hole.ts";

/** What the reckoning says about a pot with a sign of trouble, each from 0 (not at all) to 1 (fully so). */
export interface Findings {
  /** Below its refill point, by how far. */
  readonly dry: number;
  /** Base without air, or nearly full. */
  readonly wet: number;
  /** Nights below where water is cut, while wet. */
  readonly coldAndWet: number;
  /** A night of late below the line of damage. */
  readonly coldNight: number;
  /** Heat of the day. */
  readonly hot: number;
  /** Roots that were lost in planting and have not grown back. */
  readonly rootsLost: number;
  readonly resting: number;
  /** More sun than it is used to. */
  readonly newSun: number;
  /** Less light than it needs. */
  readonly dim: number;
  /** Mix so dry that water runs off. */
  readonly sheds: number;
  readonly holeBlocked: number;
}

/** Air at which leafy crowns lose more than good roots bring, °C. Chosen by us. */
const HOT_C = [28, 38] as const;

/** Reads the pot's state for a diagnosis. */
export function findingsOf({ now, here, stander }: PotStudy, nowUtcMs: number): Findings {
  const { values, cloud, inVessel, aftercare } = now;
  const mean = (of: (i: number) => number) =>
    meanOf({ values: cloud.waterMl.map((_, i) => of(i)), weightFrac: cloud.weightFrac });
  const left = (i: number) =>
    usableLeftFrac(now, { waterMl: cloud.waterMl[i]!, capacityFactor: cloud.capacityFactor[i]! });
  const refill = Math.max(0.08, refillFracNow(now));
  const contentFrac = (i: number) =>
    cloud.waterMl[i]! / (inVessel.hold.capacityMl * cloud.capacityFactor[i]!);
  const wet = mean((i) => Math.max(contentFrac(i) > now.wetAboveFrac ? 1 : 0, ramp(left(i), [0.6, 1])));
  const recentC = Math.min(...here.at.nightsBeforeC, Number.POSITIVE_INFINITY);
  const hottestC = hottestTodayC(here.at);
  return {
    dry: mean((i) => ramp(refill - left(i), [0, refill])),
    wet,
    coldAndWet: wet * ramp(values.cutWaterNightC - recentC, [-2, 4]),
    coldNight: ramp(values.damageC - recentC, [-1, 2]),
    hot: ramp(hottestC, HOT_C),
    rootsLost: aftercare === null ? 0 : 1 - aftercare.rootsFrac,
    resting: now.rest.restingShareFrac,
    newSun: stander.tender ? ramp(here.at.spot.sunFrac, [0.3, 0.8]) : 0,
    dim: 1 - ramp(lightTodayMj(here.at) / values.lightMjPerM2PerDay, [0.4, 1]),
    sheds: shedsNow(now),
    holeBlocked: mayBeBlocked(now, nowUtcMs) ? 1 : 0,
  };
}

/** 0 up to the first bound, 1 from the second, straight in between; 0 for what is not known. */
function ramp(value: number, [from, to]: readonly [number, number]): number {
  return Number.isFinite(value) ? Math.min(1, Math.max(0, (value - from) / (to - from))) : 0;
}

function shedsNow({ cloud, inVessel }: PotStudy["now"]): number {
  const belowFrac = inVessel.repellentBelowFrac;
  if (belowFrac === null) return 0;
  let share = 0;
  for (const [i, waterMl] of cloud.waterMl.entries()) {
    if (waterMl / inVessel.hold.volumeMl < belowFrac) share += cloud.weightFrac[i]!;
  }
  return share;
}

function hottestTodayC({ forcing, size, days }: PotStudy["here"]["at"]): number {
  let hottest = Number.NEGATIVE_INFINITY;
  for (let hour = days[0]!.fromHour; hour < days[0]!.toHour; hour++) {
    let sum = 0;
    for (let m = 0; m < size; m++) sum += forcing.tempC[hour * size + m]! / size;
    hottest = Math.max(hottest, sum);
  }
  return hottest;
}

/** Light of a whole day: tomorrow's, as today may be cut short. */
function lightTodayMj({ lightMjPerM2, size, days }: PotStudy["here"]["at"]): number {
  const d = Math.min(1, days.length - 1);
  let sum = 0;
  for (let m = 0; m < size; m++) sum += lightMjPerM2[d * size + m]! / size;
  return sum;
}
