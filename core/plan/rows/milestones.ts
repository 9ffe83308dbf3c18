import { calendarDay } from "../../site/local-days.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { PlanContext } from "../plan-context.ts";
import type { Milestone } from "../pot-plan.ts";

/** Days after planting on which something ends or begins, from today to the end of what is reckoned. */
export function milestonesOf({ site, nowUtcMs, days }: PlanContext, { now }: PotStudy): Milestone[] {
  const care = now.aftercare;
  if (care === null || care.stage === "done") return [];
  const today = calendarDay(nowUtcMs, site.zone);
  const last = days.at(-1)!.day;
  const on = (kind: Milestone["kind"], utcMs: number) => ({ kind, day: calendarDay(utcMs, site.zone) });
  return [
    ...(care.stage === "dry" ? [on("first-drink", care.dryUntilUtcMs)] : []),
    on("more-sun", care.shadeUntilUtcMs),
    on("feed", care.noFeedUntilUtcMs),
  ]
    .filter(({ day }) => day >= today && day <= last)
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}
