import type { PotNow } from "../../pot/pot-now.ts";
import type { SpotDays } from "../days/spot-days.ts";
import { usableLeftFrac } from "../harm/refill-point.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf } from "./spread-of.ts";

/** Days from one to before another. */
export interface DaySpanOf {
  readonly fromDay: number;
  readonly toDay: number;
}

/** Weights of members that are as likely as each other. */
export function evenly(size: number): Float64Array {
  return new Float64Array(size).fill(1 / size);
}

/** Lowest value of a column by day and member over some days, by member. */
export function lowestOver(column: Float64Array, { size, fromDay, toDay }: DaySpanOf & { size: number }) {
  const lowest = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  for (let d = fromDay; d < toDay; d++) {
    for (let m = 0; m < size; m++) lowest[m] = Math.min(lowest[m]!, column[d * size + m]!);
  }
  return lowest;
}

/** Sum of a column by day and member over some days, by member. */
export function sumOver(column: Float64Array, { size, fromDay, toDay }: DaySpanOf & { size: number }) {
  const sum = new Float64Array(size);
  for (let d = fromDay; d < toDay; d++) for (let m = 0; m < size; m++) sum[m]! += column[d * size + m]!;
  return sum;
}

/** Warmest hour of air from one to before another, by member. */
export function hottestOver({ forcing, size }: SpotDays, hours: { fromHour: number; toHour: number }) {
  const hottest = new Float64Array(size).fill(Number.NEGATIVE_INFINITY);
  for (let hour = hours.fromHour; hour < hours.toHour; hour++) {
    for (let m = 0; m < size; m++) hottest[m] = Math.max(hottest[m]!, forcing.tempC[hour * size + m]!);
  }
  return hottest;
}

/** Nights that differ by no more are alike. Chosen by us: forecasts are no surer. */
const ALIKE_C = 1;

/** The coldest night of some days in the middle of the cloud; the first of those that are alike. */
export function coldestNight(
  nightMinC: Float64Array,
  { size, fromDay, toDay }: DaySpanOf & { size: number },
): number {
  const midsC = Array.from({ length: toDay - fromDay }, (_, i) => {
    const night = { values: nightMinC, offset: (fromDay + i) * size, weightFrac: evenly(size) };
    return quantilesOf(night, [0.5])[0]!;
  });
  const alikeC = Math.min(...midsC) + ALIKE_C;
  return fromDay + midsC.findIndex((midC) => midC <= alikeC);
}

/** Share of usable water left now, middle of the cloud; not below nothing. */
export function leftFracNow(now: PotNow): number {
  const left = now.cloud.waterMl.map((waterMl, i) =>
    usableLeftFrac(now, { waterMl, capacityFactor: now.cloud.capacityFactor[i]! }),
  );
  const mid = quantilesOf({ values: left, weightFrac: now.cloud.weightFrac }, [0.5])[0]!;
  return roundTo(Math.min(1, Math.max(0, mid)), 0.01);
}

/** Rain as it is told, mm: to a tenth below ten. */
export function rainFigureMm(rainMm: number): number {
  return roundTo(rainMm, rainMm < 10 ? 0.1 : 1);
}
