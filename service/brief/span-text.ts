import { calendarDay } from "../../core/site/local-days.ts";
import type { Naming } from "./naming.ts";

/** Hours from to; of a span within another day the day is said once. */
export function spanText(span: { from: string; to: string }, { words, when, plan }: Naming): string {
  const fromUtcMs = Date.parse(span.from);
  const day = calendarDay(fromUtcMs, plan.zone);
  const isOneDay = day === calendarDay(Date.parse(span.to), plan.zone);
  const clock = words.clock(fromUtcMs, plan.zone);
  const otherDay = day === plan.forDay ? words.say("when.today", { clock }) : when(span.from);
  const from = isOneDay ? clock : otherDay;
  return words.say("caution.span", { from, to: when(span.to) });
}
