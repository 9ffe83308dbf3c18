import type { Course } from "../harm/course.ts";
import { refillFracNow, usableLeftFrac } from "../harm/refill-point.ts";
import type { Spread } from "../plan.ts";
import { daysToRefill } from "../rows/pot-outlook.ts";

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
  const { unusableMl, usableMl } = now.inVessel.hold;
  const refillMl = unusableMl + refillFracNow(now) * usableMl;
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

/** Days from now until the refill point is reached again after a pour in some hour; null when that is not in sight. */
export function refillAgainDays(course: Course, pouredHour: number): Spread | null {
  const { capacityMl, unusableMl, usableMl } = course.now.inVessel.hold;
  const limit = (unusableMl + refillFracNow(course.now) * usableMl) / capacityMl;
  return daysToRefill({ course, limit, capacityMl, pouredHour });
}
