import type { Site } from "../../../core/site/site.ts";
import { sunHours } from "../../../core/site/sun-hours.ts";
import { type Spread, spreadOf } from "../../../core/weather/spread.ts";
import { HOUR_MS, type Weather } from "../../../core/weather/weather.ts";

/** One hour as the strip draws it; NaN where the forecast does not know. */
export interface NextHour {
  readonly startUtcMs: number;
  readonly tempC: number;
  readonly rainMm: Spread;
  readonly gustMPerS: number;
  /** The sun is up in the middle of the hour. */
  readonly isDay: boolean;
}

/** The hours from now on, as far as the forecast goes. */
export function nextHours(input: {
  weather: Weather;
  site: Site;
  nowUtcMs: number;
  hourCount: number;
}): NextHour[] {
  const { weather, site, nowUtcMs, hourCount } = input;
  const first = Math.floor((nowUtcMs - weather.startUtcMs) / HOUR_MS);
  if (first < 0 || first >= weather.hourCount) return [];
  const count = Math.min(hourCount, weather.hourCount - first);
  const startUtcMs = weather.startUtcMs + first * HOUR_MS;
  const { heightSine } = sunHours({ startUtcMs, hourCount: count }, site);
  return Array.from({ length: count }, (_, hour) => ({
    startUtcMs: startUtcMs + hour * HOUR_MS,
    tempC: weather.hours.tempC[first + hour]!,
    rainMm: rainSpread(weather, first + hour),
    gustMPerS: weather.hours.gustMPerS[first + hour]!,
    isDay: heightSine[hour]! > 0,
  }));
}

function rainSpread({ hours, members }: Weather, hour: number): Spread {
  const single = hours.rainMm[hour]!;
  const alone = { low: single, mid: single, high: single };
  if (!members) return alone;
  const from = hour * members.memberCount;
  const known = members.rainMm.slice(from, from + members.memberCount).filter(Number.isFinite);
  return known.length < 2 ? alone : spreadOf(known);
}
