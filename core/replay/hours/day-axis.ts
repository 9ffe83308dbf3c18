import { type LocalDay, localDays, utcMsOfLocal } from "../../site/local-days.ts";
import type { CalendarDay, Site } from "../../site/site.ts";
import { HOUR_MS } from "../../weather/weather.ts";

/** Whole local days laid out on hours. */
export interface DayAxis {
  readonly site: Site;
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly days: readonly LocalDay[];
  /** Days since 1970 of the first day: the key of random numbers. */
  readonly firstDayNumber: number;
}

const DAY_MS = 24 * HOUR_MS;

/** The hours of a number of local days; where clocks are off by half an hour, the hour in whose middle a day begins is its first. */
export function dayAxis(site: Site, firstDay: CalendarDay, dayCount: number): DayAxis {
  const firstMs = Date.parse(`${firstDay}T00:00:00Z`);
  const dayAfter = new Date(firstMs + dayCount * DAY_MS).toISOString().slice(0, 10) as CalendarDay;
  const wholeHour = (utcMs: number) => Math.floor(utcMs / HOUR_MS) * HOUR_MS;
  const startUtcMs = wholeHour(utcMsOfLocal(firstDay, 0, site.zone));
  const hourCount = (wholeHour(utcMsOfLocal(dayAfter, 0, site.zone)) - startUtcMs) / HOUR_MS;
  const axis = { startUtcMs, hourCount };
  return { site, ...axis, days: localDays(axis, site.zone), firstDayNumber: firstMs / DAY_MS };
}

/** Month of a calendar day, 0 to 11. */
export function monthOf(day: CalendarDay): number {
  return Number(day.slice(5, 7)) - 1;
}
