import type { JournalEntry } from "../../core/journal/entry.ts";
import type { Outcome } from "../../core/problem.ts";
import { daysOfHours } from "../../core/replay/hours/days-of-hours.ts";
import type { Stage } from "../../core/replay/world/known-pot.ts";
import type { CalendarDay, Site } from "../../core/site/site.ts";
import { weatherReady } from "../../core/weather/ready.ts";
import { HOUR_MS, type HourColumns, type Weather } from "../../core/weather/weather.ts";
import { CREDIT } from "../feed/credit.ts";
import type { FeedSettings } from "../feed/feed-settings.ts";
import { fetchPastYear } from "../feed/open-meteo/archive.ts";
import type { Ground } from "./run-replay.ts";

/** The id under which a grower's own site stands in a report. */
export const OWN_SITE = "own-site";

/** Days of weather before and after the year that a replay needs. */
const DAYS_BEFORE = 6;
const DAYS_AFTER = 11;
const DAY_MS = 24 * HOUR_MS;

interface OwnYearAsk {
  readonly site: Site;
  readonly stage: Stage;
  /** The grower's gauge and thermometer mend what the feed has of the place. */
  readonly journal: readonly JournalEntry[];
  readonly year: number;
  readonly nowUtcMs: number;
}

/** A year at the grower's own site from the feed's archive, with what forecasts truly said where they were kept. */
export async function yearFromArchive(of: OwnYearAsk & { feed: FeedSettings }): Promise<Outcome<Ground>> {
  const { site, year, feed, nowUtcMs } = of;
  const dayOf = (utcMs: number) => new Date(utcMs).toISOString().slice(0, 10) as CalendarDay;
  const toMs = Math.min(Date.UTC(year + 1, 0, 1) + DAYS_AFTER * DAY_MS, nowUtcMs - DAY_MS);
  const fetched = await fetchPastYear({
    point: site,
    feed,
    nowUtcMs,
    fromDay: dayOf(Date.UTC(year, 0, 1) - DAYS_BEFORE * DAY_MS),
    toDay: dayOf(toMs),
  });
  if (!fetched.ok) return fetched;
  const { runs } = fetched.value;
  const ground = groundOf(of, fetched.value);
  return ground.ok ? { ok: true, value: { ...ground.value, told: { ...ground.value.told!, runs } } } : ground;
}

/** The same from hours that the house has kept itself; forecasts are drawn with published errors. */
export function yearFromHours(
  of: OwnYearAsk,
  past: { startUtcMs: number; hours: HourColumns },
): Outcome<Ground> {
  return groundOf(of, past);
}

function groundOf(of: OwnYearAsk, past: { startUtcMs: number; hours: HourColumns }): Outcome<Ground> {
  const { site, stage } = of;
  const { startUtcMs, hours } = past;
  const hourCount = hours.tempC.length;
  const lastUtcMs = startUtcMs + (hourCount - 1) * HOUR_MS;
  const weather: Weather = {
    startUtcMs,
    hourCount,
    hours,
    members: null,
    origin: { source: "primary", fetchedUtcMs: lastUtcMs, credit: CREDIT.primary },
  };
  const ready = weatherReady({
    weather,
    site,
    journal: of.journal,
    nowUtcMs: lastUtcMs,
    cloudSize: 1,
    horizonHours: 1,
    seed: 1,
  });
  const told = daysOfHours(site, ready.past);
  const days = told?.daily.rainMm.length ?? 0;
  if (told === null || days < LEAST_DAYS) {
    return {
      ok: false,
      problems: [
        { code: "year-not-kept", path: ["replay"], data: { year: of.year, days, least: LEAST_DAYS } },
      ],
    };
  }
  return {
    ok: true,
    value: { placeId: OWN_SITE, daily: told.daily, stage, told: { hours: told.hours, runs: null } },
  };
}

/** Eleven months, with what a replay needs on either side. */
const LEAST_DAYS = 335 + DAYS_BEFORE + DAYS_AFTER;
