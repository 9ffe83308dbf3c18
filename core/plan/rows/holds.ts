import { calendarDay } from "../../site/local-days.ts";
import type { CalendarDay } from "../../site/site.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Hold } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { meanOf } from "./spread-of.ts";

/** Rest from which feed and repotting wait. Chosen by us: mostly at rest. */
const RESTING_SHARE = 0.6;
/** Nights colder than this are no time to cut roots. Common practice for plants of warm countries. */
const REPOT_NIGHT_C = 10;

/** What should wait: feed and full sun after planting, feed and repotting at rest, repotting before cold nights. */
export function holdsOf(context: PlanContext, { now, here }: PotStudy): Hold[] {
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
  return holds;
}

/** Lowest three-night mean of the horizon, mean of the cloud. */
function coldest({ threeNightC, size, days }: PotStudy["here"]["at"]): number {
  const weightFrac = new Float64Array(size).fill(1 / size);
  const means = days.map((_, d) => meanOf({ values: threeNightC, offset: d * size, weightFrac }));
  return Math.min(...means.filter(Number.isFinite), Number.POSITIVE_INFINITY);
}
