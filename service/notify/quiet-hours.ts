import { calendarDay, utcMsOfLocal } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import type { QuietHours } from "../store/person.ts";

const DAY_MS = 86_400_000;

/** When the quiet hours that hold now are over, or null outside them. Hours are those of the site's clock. */
export function quietUntilUtcMs(
  quiet: QuietHours | null,
  { nowUtcMs, zone }: { readonly nowUtcMs: number; readonly zone: string },
): number | null {
  if (quiet === null || quiet.fromHour === quiet.toHour) return null;
  const today = calendarDay(nowUtcMs, zone);
  const isOverMidnight = quiet.fromHour > quiet.toHour;
  for (const startDay of isOverMidnight ? [dayBefore(today), today] : [today]) {
    const endDay = isOverMidnight ? dayAfter(startDay) : startDay;
    const fromUtcMs = utcMsOfLocal(startDay, quiet.fromHour, zone);
    const toUtcMs = utcMsOfLocal(endDay, quiet.toHour, zone);
    if (nowUtcMs >= fromUtcMs && nowUtcMs < toUtcMs) return toUtcMs;
  }
  return null;
}

const dayBefore = (day: CalendarDay) => shifted(day, -DAY_MS);
const dayAfter = (day: CalendarDay) => shifted(day, DAY_MS);

function shifted(day: CalendarDay, byMs: number): CalendarDay {
  return new Date(Date.parse(`${day}T12:00Z`) + byMs).toISOString().slice(0, 10) as CalendarDay;
}
