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

/**
 * The hours of a number of local days.
 * @throws RangeError when the zone is off by part of an hour, so that a day does not begin with a whole UTC hour
 */
export function dayAxis(site: Site, firstDay: CalendarDay, dayCount: number): DayAxis {
  const firstMs = Date.parse(`${firstDay}T00:00:00Z`);
  const dayAfter = new Date(firstMs + dayCount * DAY_MS).toISOString().slice(0, 10) as CalendarDay;
  const startUtcMs = utcMsOfLocal(firstDay, 0, site.zone);
  if (startUtcMs % HOUR_MS !== 0) throw new RangeError(`${site.zone} is off by part of an hour`);
  const hourCount = (utcMsOfLocal(dayAfter, 0, site.zone) - startUtcMs) / HOUR_MS;
  const axis = { startUtcMs, hourCount };
  return { site, ...axis, days: localDays(axis, site.zone), firstDayNumber: firstMs / DAY_MS };
}

/** Month of a calendar day, 0 to 11. */
export function monthOf(day: CalendarDay): number {
  return Number(day.slice(5, 7)) - 1;
}
