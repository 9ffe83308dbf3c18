import { calendarDay } from "../../site/local-days.ts";
import type { CalendarDay } from "../../site/site.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { PlanContext } from "../plan-context.ts";
import type { Diagnosis, Hold } from "../pot-plan.ts";
import { hottestOver, sumOver } from "./day-figures.ts";
import { meanOf, quantilesOf } from "./spread-of.ts";

/** Rest from which feed and repotting wait. Chosen by us: mostly at rest. */
const RESTING_SHARE = 0.6;
/** Nights colder than this are no time to cut roots. Common practice for plants of warm countries. */
const REPOT_NIGHT_C = 10;

/** Rain at the pot, mm until tomorrow evening, that washes a treatment off; in half of the cloud or more. Common practice. */
const WASHES_OFF_MM = 2;
/** Warmest hour of the day from which sprayed leaves burn. Common practice; the label's own figure goes before. */
const BURNS_C = 30;

/**
 * What should wait: feed and full sun after planting, feed and repotting at rest, repotting before cold nights; and,
 * where pests were noted, a treatment ahead of rain or in heat.
 */
export function holdsOf(context: PlanContext, study: PotStudy, seen: readonly Diagnosis[]): Hold[] {
  const { now, here } = study;
  const dayOf = (utcMs: number): CalendarDay => calendarDay(utcMs, context.site.zone);
  const holds: Hold[] = [];
  const care = now.aftercare;
  if (care !== null && care.noFeedUntilUtcMs > context.nowUtcMs) {
    holds.push({ kind: "feed", until: dayOf(care.noFeedUntilUtcMs), because: "fresh-roots" });
  }
  if (care !== null && care.shadeUntilUtcMs > context.nowUtcMs) {
    holds.push({ kind: "full-sun", until: dayOf(care.shadeUntilUtcMs), because: "fresh-roots" });
  }
  const resting = now.rest.restingShareFrac >= RESTING_SHARE;
  if (resting && !holds.some(({ kind }) => kind === "feed")) {
    holds.push({ kind: "feed", until: null, because: "resting" });
  }
  if (resting) holds.push({ kind: "repot", until: null, because: "resting" });
  else if (!now.values.leafy && coldest(here.at) < REPOT_NIGHT_C) {
    holds.push({ kind: "repot", until: null, because: "cold-nights" });
  }
  const treat = seen.some(({ sign }) => sign === "pests") ? treatmentHold(context, study) : null;
  return treat === null ? holds : [...holds, treat];
}

/** No treatment that rain washes off or heat burns in: until the last day in a row that brings either. */
function treatmentHold({ days, size }: PlanContext, { here }: PotStudy): Hold | null {
  const weightFrac = new Float64Array(size).fill(1 / size);
  const mid = (values: Float64Array) => quantilesOf({ values, weightFrac }, [0.5])[0]!;
  const wet = (d: number) =>
    mid(sumOver(here.at.rainMm, { size, fromDay: d, toDay: d + 1 })) >= WASHES_OFF_MM;
  const hot = (d: number) => mid(hottestOver(here.at, days[d]!)) >= BURNS_C;
  const reason = (d: number): "rain" | "heat" | null =>
    d >= days.length ? null : wet(d) ? "rain" : hot(d) ? "heat" : null;
  const first = reason(0) ?? (days.length > 1 && wet(1) ? "rain" : null);
  if (first === null) return null;
  let last = reason(0) === null ? 1 : 0;
  while (reason(last + 1) !== null) last++;
  return { kind: "treat", until: days[last]!.day, because: first };
}

/** Lowest three-night mean of the horizon, mean of the cloud. */
function coldest({ threeNightC, size, days }: PotStudy["here"]["at"]): number {
  const weightFrac = new Float64Array(size).fill(1 / size);
  const means = days.map((_, d) => meanOf({ values: threeNightC, offset: d * size, weightFrac }));
  return Math.min(...means.filter(Number.isFinite), Number.POSITIVE_INFINITY);
}
