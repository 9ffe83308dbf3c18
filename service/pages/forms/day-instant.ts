import type { Problem } from "../../../core/problem.ts";
import { utcMsOfLocal } from "../../../core/site/local-days.ts";
import type { CalendarDay } from "../../../core/site/site.ts";

/** Hour of the local clock that stands for a day of which only the date is known. Chosen by us: the morning round. */
const MORNING_HOUR = 8;

/** The instant for a calendar day in the site's zone; never after now. */
export function dayInstant(input: {
  field: string;
  day: string | undefined;
  nowUtcMs: number;
  zone: string;
}): { ok: true; value: number } | { ok: false; problems: readonly Problem[] } {
  const { field, day, nowUtcMs, zone } = input;
  const path = [field];
  if (day === undefined || day === "") return { ok: false, problems: [{ code: "missing", path }] };
  if (!isCalendarDay(day)) return { ok: false, problems: [{ code: "not-a-day", path }] };
  if (utcMsOfLocal(day, 0, zone) > nowUtcMs) return { ok: false, problems: [{ code: "day-to-come", path }] };
  return { ok: true, value: Math.min(utcMsOfLocal(day, MORNING_HOUR, zone), nowUtcMs) };
}

/** A day that exists, written in full. */
export function isCalendarDay(text: string): text is CalendarDay {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const utcMs = Date.parse(`${text}T00:00Z`);
  return Number.isFinite(utcMs) && new Date(utcMs).toISOString().startsWith(text);
}
