import type { CalendarDay } from "../../core/site/site.ts";
import type { BriefTiming } from "../brief/brief-value.ts";

const DAY_MS = 86_400_000;

/**
 * Whether a day's brief was late, and the days before it that had none. The first brief of a house is neither: nobody
 * was waiting for it.
 */
export function briefTiming(of: {
  readonly forDay: CalendarDay;
  /** When it was made, where that was after its hour. */
  readonly lateUtcMs: number | null;
  readonly dueUtcMs: number;
  /** Local days that have their morning, in any order. */
  readonly morningDays: readonly string[];
}): BriefTiming {
  const { forDay, lateUtcMs, dueUtcMs, morningDays } = of;
  const last = morningDays
    .filter((day) => day < forDay)
    .sort()
    .at(-1);
  if (last === undefined) return { lateUtcMs: null, dueUtcMs, missedDays: [] };
  return { lateUtcMs, dueUtcMs, missedDays: daysBetween(last, forDay) };
}

/** The days after one and before another. */
function daysBetween(from: string, to: string): CalendarDay[] {
  const days: CalendarDay[] = [];
  for (let at = Date.parse(from) + DAY_MS; at < Date.parse(to); at += DAY_MS)
    days.push(new Date(at).toISOString().slice(0, 10) as CalendarDay);
  return days;
}
