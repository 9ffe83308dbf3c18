import { DateTime } from "luxon";
import type { Problem } from "../../../core/problem.ts";

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
  const at = DateTime.fromISO(day, { zone });
  if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || !at.isValid)
    return { ok: false, problems: [{ code: "not-a-day", path }] };
  if (at.toMillis() > nowUtcMs) return { ok: false, problems: [{ code: "day-to-come", path }] };
  return { ok: true, value: Math.min(at.set({ hour: MORNING_HOUR }).toMillis(), nowUtcMs) };
}
