import type { SpotForcing } from "../../site/forcing.ts";
import type { Spot } from "../../site/spot.ts";
import type { PlanDay } from "./plan-days.ts";

/** What a spot brings by plan day; index = day * size + member where it says so. */
export interface SpotDays {
  readonly spot: Spot;
  readonly forcing: SpotForcing;
  readonly days: readonly PlanDay[];
  readonly size: number;
  /** Lowest leaf temperature of the night, by day and member. */
  readonly nightMinC: Float64Array;
  /** Minima of the last two nights, oldest first; fewer when the past is short. */
  readonly nightsBeforeC: readonly number[];
  /** Mean of that night's minimum and the two before it, by day and member. */
  readonly threeNightC: Float64Array;
  /** By day and member. */
  readonly lightMjPerM2: Float64Array;
  /** Rain that reaches a rim here, by day and member. */
  readonly rainMm: Float64Array;
  /** Strongest gust by day. */
  readonly gustMPerS: Float64Array;
}

/** Gathers a spot's hours into plan days; `past` lends the nights before the first. */
export function spotDays(input: {
  spot: Spot;
  ahead: SpotForcing;
  past: SpotForcing | undefined;
  days: readonly PlanDay[];
}): SpotDays {
  const { spot, ahead, days } = input;
  const size = ahead.memberCount;
  const column = () => new Float64Array(days.length * size);
  const found = { nightMinC: column(), lightMjPerM2: column(), rainMm: column() };
  const gustMPerS = new Float64Array(days.length);
  for (const [d, day] of days.entries()) {
    const row = d * size;
    found.nightMinC.fill(Number.POSITIVE_INFINITY, row, row + size);
    for (let hour = day.fromHour; hour < day.toHour; hour++) {
      if (hour >= (day.workHours[0] ?? day.fromHour)) {
        gustMPerS[d] = Math.max(gustMPerS[d]!, ahead.gustMPerS[hour]!);
      }
      addHour({ found, ahead, row, hour, counts: hour >= day.nightFromHour });
    }
  }
  const nightsBeforeC = nightsBefore(input.past);
  const threeNightC = meanOfThree({ nightMinC: found.nightMinC, size, before: nightsBeforeC });
  return { spot, forcing: ahead, days, size, ...found, nightsBeforeC, threeNightC, gustMPerS };
}

function addHour(input: {
  found: Pick<SpotDays, "nightMinC" | "lightMjPerM2" | "rainMm">;
  ahead: SpotForcing;
  row: number;
  hour: number;
  counts: boolean;
}): void {
  const { found, ahead, row, counts } = input;
  const at = input.hour * ahead.memberCount;
  for (let m = 0; m < ahead.memberCount; m++) {
    const tempC = ahead.plantTempC[at + m]!;
    if (counts && tempC < found.nightMinC[row + m]!) found.nightMinC[row + m] = tempC;
    found.lightMjPerM2[row + m]! += ahead.lightMjPerM2[at + m]!;
    found.rainMm[row + m]! += ahead.rainMm[at + m]!;
  }
}

function nightsBefore(past: SpotForcing | undefined): number[] {
  const nights: number[] = [];
  for (let end = past?.hourCount ?? 0; end >= 24 && nights.length < 2; end -= 24) {
    let minC = Number.POSITIVE_INFINITY;
    for (let hour = end - 24; hour < end; hour++) minC = Math.min(minC, past!.plantTempC[hour]!);
    nights.unshift(minC);
  }
  return nights;
}

function meanOfThree(input: { nightMinC: Float64Array; size: number; before: readonly number[] }) {
  const { nightMinC, size, before } = input;
  const means = new Float64Array(nightMinC.length);
  for (let i = 0; i < means.length; i++) {
    const d = Math.floor(i / size);
    let sum = nightMinC[i]!;
    let count = 1;
    for (let back = 1; back <= 2; back++) {
      const value = d >= back ? nightMinC[i - back * size] : before[before.length + d - back];
      if (value === undefined || !Number.isFinite(value)) continue;
      sum += value;
      count++;
    }
    means[i] = sum / count;
  }
  return means;
}
