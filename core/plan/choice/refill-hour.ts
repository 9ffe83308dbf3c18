import type { Spread } from "../../weather/spread.ts";
import type { Course } from "../harm/course.ts";
import { refillContentMl, refillFracNow, usableLeftFrac } from "../harm/refill-point.ts";
import { roundTo } from "../rows/round-to.ts";
import { spreadOf } from "../rows/spread-of.ts";

/** Share of the cloud that is at its refill point before tomorrow's round. */
export function dueShareFrac({ now, trajectory, days }: Course): number {
  const { size, waterMl } = trajectory;
  const { weightFrac, capacityFactor } = now.cloud;
  const refill = refillFracNow(now);
  const last = days[0]!.toHour - 1;
  let share = 0;
  for (let i = 0; i < size; i++) {
    const content = last < 0 ? now.cloud.waterMl[i]! : waterMl[last * size + i]!;
    const left = usableLeftFrac(now, { waterMl: content, capacityFactor: capacityFactor[i]! });
    if (left <= refill) share += weightFrac[i]!;
  }
  return share;
}

/** First hour at which half of the cloud is at its refill point: 0 = now; null when that is not in sight. */
export function reachesRefillHour({ now, trajectory }: Course): number | null {
  const { size, hourCount, waterMl } = trajectory;
  const { weightFrac, capacityFactor } = now.cloud;
  const refillMl = refillContentMl(now);
  for (let hour = -1; hour < hourCount; hour++) {
    let share = 0;
    for (let i = 0; i < size; i++) {
      const content = hour < 0 ? now.cloud.waterMl[i]! : waterMl[hour * size + i]!;
      if (content <= refillMl * capacityFactor[i]!) share += weightFrac[i]!;
    }
    if (share >= 0.5) return hour + 1;
  }
  return null;
}

/**
 * Days from now until the refill point is first reached, null when most of the cloud does not reach it.
 * @param pouredHour  an hour of water before which nothing counts
 */
export function daysToRefill({ now, trajectory }: Course, pouredHour?: number): Spread | null {
  const { size, weightFrac, capacityFactor, waterMl } = now.cloud;
  const refillMl = refillContentMl(now);
  const days = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
  for (let i = 0; i < size; i++) {
    const limitMl = refillMl * capacityFactor[i]!;
    if (pouredHour === undefined && waterMl[i]! <= limitMl) days[i] = 0;
    const from = pouredHour ?? 0;
    for (let hour = from; hour < trajectory.hourCount && days[i] === Number.POSITIVE_INFINITY; hour++) {
      if (trajectory.waterMl[hour * size + i]! <= limitMl) days[i] = (hour + 1) / 24;
    }
  }
  const horizonDays = trajectory.hourCount / 24;
  const spread = spreadOf({ values: days, weightFrac }, 0.1);
  if (!Number.isFinite(spread.mid)) return null;
  return Number.isFinite(spread.high) ? spread : { ...spread, high: roundTo(horizonDays, 0.1) };
}
