import type { Settings } from "../../plan/settings.ts";
import { forcingAtSpot } from "../../site/forcing-at-spot.ts";
import type { HoursReady } from "../../weather/hours-ready.ts";
import { seedFrom } from "../../weather/seeded-random.ts";
import { HOUR_MS, type Weather } from "../../weather/weather.ts";
import { type Forecaster, forecaster } from "../forecast/forecaster.ts";
import { type PreviousRuns, previousRunsForecaster } from "../forecast/previous-runs.ts";
import type { DailyWeather } from "../hours/daily-weather.ts";
import { dayAxis } from "../hours/day-axis.ts";
import { hoursOfDays } from "../hours/hours-of-days.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";
import type { PlannerFeed } from "../planner/planner-policy.ts";
import { type Outlook, outlookOf } from "../policies/outlook.ts";
import { placeNormals } from "../policies/place-normals.ts";
import { knownPots, type Stage } from "../world/known-pot.ts";
import { trueSpots } from "../world/true-spots.ts";
import { type WorldClock, worldClock } from "../world/world-clock.ts";
import { worldPot } from "../world/world-pot.ts";
import type { Season } from "./season.ts";

/** Days of the feed's past that a morning's weather holds, days ahead, and members of its ensemble. */
const PAST_DAYS = 30;
const AHEAD_DAYS = 8;
const MEMBERS = 30;

/** One seed's world at one place: all its years, each to be played as a season. */
export interface SeedWorld {
  readonly years: readonly number[];
  seasonOf(year: number): Season;
  /** What the planner is given. */
  readonly feed: PlannerFeed;
}

/** What is known of a place beyond its days. */
export interface Told {
  /** Its hours, on the axis of its days; null where the days are to be cut into plausible ones. */
  readonly hours: HoursReady | null;
  /** What forecasts truly said; null where they are drawn with published errors. */
  readonly runs: PreviousRuns | null;
}

/** Cuts the days into hours, draws the forecasts, the true spots and, for each year anew, the hidden pots. */
export function worldOfSeed(of: {
  daily: DailyWeather;
  stage: Stage;
  seed: number;
  settings: Pick<Settings, "tripWorth" | "liftLimitKg">;
  told?: Told;
}): SeedWorld {
  const { daily, stage, seed, settings } = of;
  const { site } = daily;
  const hours = of.told?.hours ?? hoursOfDays(daily, seed);
  const runs = of.told?.runs ?? null;
  const axis = dayAxis(site, daily.firstDay, daily.rainMm.length);
  const forecasts =
    runs === null
      ? forecaster({ daily, hours, seed, memberCount: MEMBERS })
      : previousRunsForecaster({ daily, hours }, runs);
  const clock = worldClock(axis, trueSpots(stage.spots, { hours, site, seed }));
  const normals = placeNormals({ daily, hours, axis });
  const known = knownPots(stage);
  const mornings = morningsOf(clock, forecasts);
  const past = new Map(stage.spots.map((spot) => [spot.id, forcingAtSpot(forecasts.past, site, spot)]));
  return {
    years: wholeYears(axis.days.map(({ day }) => day)),
    feed: { weatherAt: mornings.weatherAt, past },
    seasonOf: (year) => ({
      stage,
      axis,
      clock,
      pots: known.map((pot, i) => worldPot(pot, seedFrom([seed, REPLAY_STREAM.world, year, i]))),
      normals,
      outlookAt: mornings.outlookAt,
      trueRainMm: hours.rainMm,
      trouble: { stage, settings },
      seed,
      ...daysOfYear(daily, year),
    }),
  };
}

/** The feed of each morning, the last kept, and its plain figures, all kept. */
function morningsOf(clock: WorldClock, forecasts: Forecaster) {
  let kept: { readonly day: number; readonly weather: Weather } | null = null;
  const weatherAt = (day: number): Weather => {
    if (kept?.day !== day) {
      const issueUtcMs = clock.startUtcMs + clock.roundHour[day]! * HOUR_MS;
      const ask = { issueDay: day, issueUtcMs, pastDays: PAST_DAYS, aheadDays: AHEAD_DAYS };
      kept = { day, weather: forecasts.weatherAt(ask) };
    }
    return kept.weather;
  };
  const outlooks = new Map<number, Outlook>();
  const outlookAt = (day: number): Outlook => {
    const had = outlooks.get(day);
    if (had !== undefined) return had;
    const weather = weatherAt(day);
    const nowHour = (clock.startUtcMs - weather.startUtcMs) / HOUR_MS + clock.roundHour[day]!;
    const outlook = outlookOf(weather, { nowHour, elevationM: clock.site.elevationM });
    outlooks.set(day, outlook);
    return outlook;
  };
  return { weatherAt, outlookAt };
}

/** Days of a year that can be played. The last of the data have no whole forecast and no next round. */
function daysOfYear({ firstDay, rainMm }: DailyWeather, year: number): { fromDay: number; toDay: number } {
  const dayOf = (date: string) =>
    Math.round((Date.parse(`${date}T00:00:00Z`) - Date.parse(`${firstDay}T00:00:00Z`)) / (24 * HOUR_MS));
  return {
    fromDay: Math.max(FIRST_DAYS, dayOf(`${year}-01-01`)),
    toDay: Math.min(rainMm.length - LAST_DAYS, dayOf(`${year + 1}-01-01`)),
  };
}

/** Days at either end of the data that are not played. */
const FIRST_DAYS = 3;
const LAST_DAYS = 9;

/** Years of which at least eleven months are there. */
function wholeYears(days: readonly string[]): number[] {
  const counts = new Map<number, number>();
  for (const day of days) {
    const year = Number(day.slice(0, 4));
    counts.set(year, (counts.get(year) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count >= 335).map(([year]) => year);
}
