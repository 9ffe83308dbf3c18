import type { Deed } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { utcMsOfLocal } from "../../../core/site/local-days.ts";
import type { Words } from "../../words/words.ts";
import type { OutlookDay, OutlookMark, OutlookPoint } from "../drawing/outlook-band.tsx";

/** The plan's days for a pot as instants: now, then the end of each local day up to the end of what was reckoned. */
export function outlookCourse(input: { plan: Plan; potPlan: PotPlan; words: Words }): {
  points: OutlookPoint[];
  days: OutlookDay[];
} {
  const { plan, potPlan, words } = input;
  const spot = plan.spots.find(({ spotId }) => spotId === potPlan.spotId);
  const [rainMm, coldestC] = [spot?.rainByDayMm ?? [], spot?.coldestByDayC ?? []];
  const [nowUtcMs, lastUtcMs] = [Date.parse(plan.issuedAt), Date.parse(plan.horizon.to)];
  const days = plan.days
    .slice(0, potPlan.outlook.byDayFrac.length)
    .map(({ day }, index) => ({
      name: words.weekday(day),
      fromUtcMs: Math.max(nowUtcMs, utcMsOfLocal(day, 0, plan.zone)),
      toUtcMs: Math.min(lastUtcMs, utcMsOfLocal(day, 24, plan.zone)),
      rainMm: rainMm[index] ?? null,
      coldestC: coldestC[index] ?? null,
    }))
    .filter(({ fromUtcMs, toUtcMs }) => toUtcMs > fromUtcMs);
  const ends = days.map(({ toUtcMs }, index) => ({
    atUtcMs: toUtcMs,
    contentFrac: potPlan.outlook.byDayFrac[index]!,
  }));
  return { points: [{ atUtcMs: nowUtcMs, contentFrac: potPlan.outlook.nowFrac }, ...ends], days };
}

/** The hours at which the plan would water, to be marked on the band. */
export function wateringMarks(potPlan: PotPlan, words: Words): OutlookMark[] {
  return [potPlan as Deed, ...potPlan.then].flatMap(({ action, from, by }) => {
    const due = from ?? by;
    const isWater = action === "water" || action === "soak-slowly";
    return isWater && due !== undefined
      ? [{ atUtcMs: Date.parse(due), text: words.say(`verb.${action}`) }]
      : [];
  });
}
