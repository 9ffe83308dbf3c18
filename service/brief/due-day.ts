import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";

/** The day on which a deed may begin; one without an hour, or that may begin today and is due tomorrow, is for today. */
export function dueDay({ from, by }: Deed, { zone, forDay }: Pick<Plan, "zone" | "forDay">): CalendarDay {
  const start = from ?? by;
  return start === undefined ? forDay : calendarDay(Date.parse(start), zone);
}

/** Whether a deed asks for hands; to leave a pot as it is, or dry, does not. */
export function asksForHands({ action }: Deed): boolean {
  return action !== "none" && action !== "keep-dry";
}
