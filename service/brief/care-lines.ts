import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import type { Naming } from "./naming.ts";

/** What ends or begins after planting, today and tomorrow; further dates stand on the page of the pot. */
export function careLines(naming: Naming): string[] {
  const { plan } = naming;
  const soon = new Set(plan.days.slice(0, 2).map(({ day }) => day));
  return plan.pots.flatMap((potPlan) => milestoneLines(potPlan, { naming, counts: (day) => soon.has(day) }));
}

function milestoneLines(
  { potId, milestones = [] }: PotPlan,
  { naming: { words, potName }, counts }: { naming: Naming; counts: (day: CalendarDay) => boolean },
): string[] {
  return milestones
    .filter(({ day }) => counts(day))
    .map(({ kind, day }) => words.say(`milestone.${kind}`, { pot: potName(potId), careDay: day }));
}
