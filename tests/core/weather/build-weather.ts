import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Site } from "../../../core/site/site.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { type WeatherReady, type WeatherReadyInput, weatherReady } from "../../../core/weather/ready.ts";
import {
  HOUR_MS,
  type HourColumns,
  type MemberColumns,
  type Weather,
} from "../../../core/weather/weather.ts";

/** A place that exists on no map, at a latitude where every season is a season. */
export const SITE: Site = {
  id: "quay",
  name: "Quay",
  latDeg: 44,
  lonDeg: 0,
  elevationM: 10,
  zone: "UTC",
};

export const OPEN_SPOT: Spot = {
  id: "roof",
  name: "Roof",
  kind: "open",
  skyFrac: 1,
  sunFrac: 1,
  windFrac: 1,
  rainFrac: 1,
  nightWarmthC: 0,
  walkOrder: 1,
};

export const START_UTC_MS = Date.UTC(2026, 5, 1);
export const PAST_DAYS = 7;
export const NOW_UTC_MS = START_UTC_MS + (PAST_DAYS * 24 + 5) * HOUR_MS;

/** Hours of plain settled summer weather; every column may be given by hour instead. */
export function buildWeather(
  change: { [K in keyof HourColumns]?: (hour: number) => number } & {
    members?: MemberColumns | null;
    fetchedUtcMs?: number;
    days?: number;
  } = {},
): Weather {
  const hourCount = 24 * (change.days ?? 21);
  const column = (name: keyof HourColumns, plain: (hour: number) => number) =>
    Float64Array.from({ length: hourCount }, (_, hour) => (change[name] ?? plain)(hour));
  const sun = (clock: number) => (clock > 4 && clock < 20 ? 2.6 * Math.sin(((clock - 4) / 16) * Math.PI) : 0);
  return {
    startUtcMs: START_UTC_MS,
    hourCount,
    hours: {
      tempC: column("tempC", (hour) => 20 + 7 * Math.cos((((hour % 24) - 14) / 12) * Math.PI)),
      dewPointC: column("dewPointC", () => 11),
      rainMm: column("rainMm", () => 0),
      windMPerS: column("windMPerS", () => 3),
      gustMPerS: column("gustMPerS", () => 6),
      radiationMjPerM2: column("radiationMjPerM2", (hour) => sun(hour % 24)),
      cloudFrac: column("cloudFrac", () => 0.2),
      weatherCode: column("weatherCode", () => 1),
      feedEt0Mm: column("feedEt0Mm", () => Number.NaN),
      feedRainChanceFrac: column("feedRainChanceFrac", () => Number.NaN),
    },
    members: change.members ?? null,
    origin: { source: "case", fetchedUtcMs: change.fetchedUtcMs ?? NOW_UTC_MS, credit: "invented" },
  };
}

/** Members that follow the single run but for what `change` adds by hour and member. */
export function buildMembers(
  weather: Weather,
  memberCount: number,
  change: { [K in keyof Omit<MemberColumns, "memberCount">]?: (hour: number, member: number) => number } = {},
): MemberColumns {
  const column = (name: keyof Omit<MemberColumns, "memberCount">) =>
    Float64Array.from({ length: weather.hourCount * memberCount }, (_, i) => {
      const hour = Math.floor(i / memberCount);
      return change[name] ? change[name](hour, i % memberCount) : weather.hours[name][hour]!;
    });
  return {
    memberCount,
    tempC: column("tempC"),
    dewPointC: column("dewPointC"),
    rainMm: column("rainMm"),
    windMPerS: column("windMPerS"),
    radiationMjPerM2: column("radiationMjPerM2"),
  };
}

export function buildReady(weather: Weather, change: Partial<WeatherReadyInput> = {}): WeatherReady {
  return weatherReady({
    weather,
    site: SITE,
    journal: [],
    nowUtcMs: NOW_UTC_MS,
    cloudSize: 51,
    horizonHours: 168,
    seed: 1,
    ...change,
  });
}

/** A site-wide entry read so many hours before now, looking back so many hours. */
export function buildReading(
  body:
    | { kind: "rain-gauge"; rainMm: number; hoursLong: number; hoursAgo?: number }
    | { kind: "thermometer"; minC: number; maxC?: number; hoursLong: number; hoursAgo?: number },
): JournalEntry {
  const { hoursLong, hoursAgo = 0, ...rest } = body;
  const atUtcMs = NOW_UTC_MS - hoursAgo * HOUR_MS;
  return {
    id: `${body.kind}-${hoursAgo}`,
    atUtcMs,
    recordedUtcMs: atUtcMs,
    body: { ...rest, sinceUtcMs: atUtcMs - hoursLong * HOUR_MS },
  };
}

export function mean(values: ArrayLike<number>): number {
  return Array.from(values).reduce((a, b) => a + b, 0) / values.length;
}

export function standardDeviation(values: ArrayLike<number>): number {
  const middle = mean(values);
  return Math.sqrt(mean(Array.from(values, (value) => (value - middle) ** 2)));
}
