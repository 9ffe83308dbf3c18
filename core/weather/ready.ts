import type { JournalEntry } from "../journal/entry.ts";
import type { StandIn } from "../plan/plan.ts";
import type { Site } from "../site/site.ts";
import { sunHours } from "../site/sun-hours.ts";
import type { HoursReady } from "./hours-ready.ts";
import { shortwaveFromSunshine } from "./shortwave.ts";
import { HOUR_MS, type Weather } from "./weather.ts";

export interface WeatherReady {
  readonly past: HoursReady;
  readonly ahead: HoursReady;
  readonly standIns: StandIn[];
  readonly trust: "full" | "reduced" | "poor";
  /** Members of a real ensemble behind `ahead`; 0 when its spread was drawn from published forecast errors. */
  readonly realMemberCount: number;
  /** Hours of `ahead` that rest on a forecast. */
  readonly knownHours: number;
}

export interface WeatherReadyInput {
  readonly weather: Weather;
  readonly site: Site;
  readonly journal: readonly JournalEntry[];
  readonly nowUtcMs: number;
  readonly cloudSize: number;
  readonly horizonHours: number;
  readonly seed: number;
}

export function weatherReady(input: WeatherReadyInput): WeatherReady {
  const { weather, site, cloudSize } = input;
  const split = Math.min(
    weather.hourCount,
    Math.max(0, Math.floor((input.nowUtcMs - weather.startUtcMs) / HOUR_MS)),
  );
  const base = settle(weather, site);
  let end = split;
  while (
    end < weather.hourCount &&
    end < split + input.horizonHours &&
    Number.isFinite(weather.hours.tempC[end]!) &&
    Number.isFinite(weather.hours.rainMm[end]!)
  )
    end++;
  return {
    past: slice(base, { from: 0, to: split, memberCount: 1 }),
    ahead: slice(base, { from: split, to: end, memberCount: cloudSize }),
    standIns: [],
    trust: "reduced",
    realMemberCount: 0,
    knownHours: end - split,
  };
}

function settle(weather: Weather, site: Site): HoursReady {
  const { hours } = weather;
  const sun = sunHours(weather, site);
  const fill = (column: Float64Array, instead: (hour: number) => number) =>
    column.map((value, hour) => (Number.isFinite(value) ? value : instead(hour)));
  const tempC = fill(hours.tempC, (hour) => hours.tempC[hour - 1] || 10);
  const cloudFrac = fill(hours.cloudFrac, () => 0.5);
  return {
    startUtcMs: weather.startUtcMs,
    hourCount: weather.hourCount,
    memberCount: 1,
    tempC,
    dewPointC: fill(hours.dewPointC, (hour) => tempC[hour]! - 5),
    rainMm: fill(hours.rainMm, () => 0),
    windMPerS: fill(hours.windMPerS, () => 2.67),
    radiationMjPerM2: fill(hours.radiationMjPerM2, (hour) =>
      shortwaveFromSunshine({
        extraterrestrialMjPerM2: sun.extraterrestrialMjPerM2[hour]!,
        sunshineFrac: 1 - cloudFrac[hour]!,
      }),
    ),
    cloudFrac,
    gustMPerS: fill(hours.gustMPerS, (hour) => 1.7 * (hours.windMPerS[hour] || 2.67)),
    weatherCode: fill(hours.weatherCode, () => -1),
  };
}

function slice(base: HoursReady, span: { from: number; to: number; memberCount: number }): HoursReady {
  const { from, to, memberCount } = span;
  const spread = (column: Float64Array) => {
    const out = new Float64Array((to - from) * memberCount);
    for (let hour = from; hour < to; hour++) {
      out.fill(column[hour]!, (hour - from) * memberCount, (hour - from + 1) * memberCount);
    }
    return out;
  };
  return {
    startUtcMs: base.startUtcMs + from * HOUR_MS,
    hourCount: to - from,
    memberCount,
    tempC: spread(base.tempC),
    dewPointC: spread(base.dewPointC),
    rainMm: spread(base.rainMm),
    windMPerS: spread(base.windMPerS),
    radiationMjPerM2: spread(base.radiationMjPerM2),
    cloudFrac: spread(base.cloudFrac),
    gustMPerS: base.gustMPerS.slice(from, to),
    weatherCode: base.weatherCode.slice(from, to),
  };
}
