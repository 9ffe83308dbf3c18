import type { Cloud } from "../../pot/cloud.ts";
import { calendarDay } from "../../site/local-days.ts";
import { daysToRefill } from "../choice/refill-hour.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Course } from "../harm/course.ts";
import { refillContentMl } from "../harm/refill-point.ts";
import type { Stander } from "../harm/spot-harm.ts";
import type { PlanContext } from "../plan-context.ts";
import type { Learned, PotOutlook } from "../pot-plan.ts";
import { roundTo } from "./round-to.ts";
import { spreadOf } from "./spread-of.ts";

/** A pot's coming days where it stands if nothing is done, by local day from now on. */
export function potOutlook(
  context: PlanContext,
  { stander, at, course }: { stander: Stander; at: SpotDays; course: Course },
): PotOutlook {
  const { now, trajectory } = course;
  const { weightFrac, capacityFactor, waterMl } = now.cloud;
  const { capacityMl } = now.inVessel.hold;
  const size = now.cloud.size;
  const fracAt = (column: ArrayLike<number>, offset: number) => {
    const frac = new Float64Array(size);
    for (let i = 0; i < size; i++) frac[i] = column[offset + i]! / (capacityMl * capacityFactor[i]!);
    return frac;
  };
  const refillContentFrac = refillContentMl(now) / capacityMl;
  const ends = context.localDays.map(({ toHour }) => toHour - 1);
  const byDay = ends.map((hour) => fracAt(trajectory.waterMl, hour * size));
  return {
    nowFrac: spreadOf({ values: fracAt(waterMl, 0), weightFrac }, 0.01),
    byDayFrac: byDay.map((values) => spreadOf({ values, weightFrac }, 0.01)),
    refillFrac: roundTo(refillContentFrac, 0.01),
    capacityMl: roundTo(capacityMl, 1),
    reachesRefillShareFrac: byDay.map((values) =>
      reachedShare({ values, weightFrac, limit: refillContentFrac }),
    ),
    wetBaseHours: spreadOf({ values: wetBaseHours(course), weightFrac }, 1),
    coldestC: spreadOf({ values: coldestC(at), weightFrac }, 0.1),
    daysToRefill: daysToRefill(course),
    massKg: roundTo(stander.massKg, 0.1),
    restingShareFrac: roundTo(now.rest.restingShareFrac, 0.01),
    dryUntil: dryUntil(context, course),
    // Infinite where the base never counts as waterlogged at rest; JSON has no such number.
    ...(Number.isFinite(now.wetAboveFrac) ? { wetAboveFrac: roundTo(now.wetAboveFrac, 0.01) } : {}),
    learned: learnedOf(now.cloud),
    ...aftercareOf(context, course),
  };
}

function learnedOf({ thirstFactor, capacityFactor, weightFrac }: Cloud): Learned {
  return {
    thirst: spreadOf({ values: thirstFactor, weightFrac }, 0.01),
    capacity: spreadOf({ values: capacityFactor, weightFrac }, 0.01),
  };
}

function aftercareOf({ site }: PlanContext, { now }: Course): Pick<PotOutlook, "aftercare"> {
  const care = now.aftercare;
  if (care === null || care.stage === "done") return {};
  const dayOf = (utcMs: number) => calendarDay(utcMs, site.zone);
  return {
    aftercare: {
      stage: care.stage,
      dryUntil: dayOf(care.dryUntilUtcMs),
      shadeUntil: dayOf(care.shadeUntilUtcMs),
      noFeedUntil: dayOf(care.noFeedUntilUtcMs),
    },
  };
}

function reachedShare(sample: { values: Float64Array; weightFrac: Float64Array; limit: number }): number {
  let share = 0;
  for (let i = 0; i < sample.values.length; i++) {
    if (sample.values[i]! <= sample.limit) share += sample.weightFrac[i]!;
  }
  return roundTo(share, 0.01);
}

function wetBaseHours({ trajectory, now }: Course): Float64Array {
  const hours = new Float64Array(now.cloud.size);
  if (!trajectory.wetBase.includes(1)) return hours;
  for (let hour = 0; hour < trajectory.hourCount; hour++) {
    for (let i = 0; i < hours.length; i++) hours[i]! += trajectory.wetBase[hour * hours.length + i]!;
  }
  return hours;
}

function coldestC({ nightMinC, size, days }: SpotDays): Float64Array {
  const coldest = nightMinC.slice(0, size);
  for (let i = size; i < days.length * size; i++) {
    coldest[i % size] = Math.min(coldest[i % size]!, nightMinC[i]!);
  }
  return coldest.map((value) => (Number.isFinite(value) ? value : 0));
}

function dryUntil({ site, nowUtcMs }: PlanContext, { now }: Course): PotOutlook["dryUntil"] {
  const care = now.aftercare;
  if (care === null || care.stage !== "dry" || care.dryUntilUtcMs <= nowUtcMs) return null;
  return calendarDay(care.dryUntilUtcMs, site.zone);
}
