import type { Outcome, Problem } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import type { Weather } from "../../core/weather/weather.ts";
import { CREDIT } from "./credit.ts";
import type { FeedSettings } from "./feed-settings.ts";
import { pullEnsemble, pullForecast } from "./open-meteo/pull.ts";

export type WeatherAnswer = Outcome<Weather> & {
  /** What was wanting in an answer that is used all the same. */
  readonly notes: readonly Problem[];
};

/**
 * The weather of a site, past days and days ahead, forecast and ensemble on one hour axis. Without a usable ensemble
 * the members are null and the notes say why.
 */
export async function fetchWeather(input: {
  readonly site: Site;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
  readonly pastDays: number;
}): Promise<WeatherAnswer> {
  const { site, feed, nowUtcMs, pastDays } = input;
  const ask = { point: site, feed, nowUtcMs };
  const forecast = await pullForecast({ ...ask, pastDays });
  if (!forecast.ok) return { ...forecast, notes: [] };
  const { startUtcMs, hourCount, hours, notes } = forecast.value;
  const ensemble = await pullEnsemble({ ...ask, want: { startUtcMs, hourCount } });
  const members = ensemble.ok ? ensemble.value : null;
  const source = feed.demo === true ? "demo" : "primary";
  const value = {
    startUtcMs,
    hourCount,
    hours,
    members,
    origin: { source, fetchedUtcMs: nowUtcMs, credit: CREDIT[source] },
  } as const;
  return { ok: true, value, notes: ensemble.ok ? notes : [...notes, ...ensemble.problems] };
}
