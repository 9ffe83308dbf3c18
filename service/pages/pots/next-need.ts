import type { Deed } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { asksForHands, dueDay } from "../../brief/due-day.ts";
import { daysBetween } from "../../words/clock.ts";
import type { Words } from "../../words/words.ts";

/** What a pot asks for next. */
export interface Need {
  /** The deed, its day, and in how many days that is; null where the plan has none for it. */
  readonly deed: { readonly action: Deed["action"]; readonly day: CalendarDay; readonly days: number } | null;
  readonly isKeptDry: boolean;
  /** Days until it is likely to want water; Infinity when that is not in sight. */
  readonly waterDays: number;
}

/** The deed that comes first, whichever place it has in the plan. */
export function nextNeed(potPlan: PotPlan, plan: Pick<Plan, "zone" | "forDay">): Need {
  const deeds: readonly Deed[] = [potPlan, ...potPlan.then];
  const [first] = deeds
    .filter(asksForHands)
    .map((deed) => ({ action: deed.action, day: dueDay(deed, plan) }))
    .sort((a, b) => (a.day < b.day ? -1 : Number(a.day > b.day)));
  const isKeptDry = deeds.some(({ action }) => action === "keep-dry");
  return {
    deed: first ? { ...first, days: daysBetween(plan.forDay, first.day) } : null,
    isKeptDry,
    waterDays: isKeptDry ? Infinity : daysToWater(potPlan),
  };
}

/** What is at its refill point today the plan has weighed, and left; what rests is not watered for being dry. */
function daysToWater({ outlook: { daysToRefill, restingShareFrac } }: PotPlan): number {
  const isLeft = restingShareFrac > 0.5 || !daysToRefill || daysToRefill.mid <= 0;
  return isLeft ? Infinity : daysToRefill.mid;
}

/** Days until a pot first asks for something; Infinity when the plan sees nothing coming. */
export function daysToNeed({ deed, waterDays }: Need): number {
  return Math.min(deed?.days ?? Infinity, waterDays);
}

/** In few words; a day that is not today is named. */
export function needText(need: Need | null, { say, weekday }: Words): string {
  if (!need) return say("need.unknown");
  const { deed, isKeptDry, waterDays } = need;
  if (deed?.days === 0) return say(`state.${deed.action}`);
  if (isKeptDry) return say("state.keep-dry");
  if (deed && deed.days <= waterDays) {
    return say("need.on-day", { state: say(`state.${deed.action}`), weekday: weekday(deed.day) });
  }
  return waterDays === Infinity
    ? say("need.nothing")
    : say("need.water-in", { leftDays: Math.floor(waterDays) });
}
