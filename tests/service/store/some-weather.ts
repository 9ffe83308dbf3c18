import {
  HOUR_MS,
  type HourColumns,
  type MemberColumns,
  type Weather,
} from "../../../core/weather/weather.ts";

const HOUR_NAMES = [
  "tempC",
  "dewPointC",
  "rainMm",
  "windMPerS",
  "gustMPerS",
  "radiationMjPerM2",
  "cloudFrac",
  "weatherCode",
  "feedEt0Mm",
  "feedRainChanceFrac",
] as const;

export type Value = (name: keyof HourColumns, hour: number) => number;

/** Weather whose every number is given by the test; 0 throughout when left out. */
export function someWeather(
  over: {
    startUtcMs?: number;
    hourCount?: number;
    fetchedUtcMs?: number;
    memberCount?: number;
    value?: Value;
  } = {},
): Weather {
  const {
    startUtcMs = Date.parse("2031-05-01T00:00Z"),
    hourCount = 48,
    memberCount = 0,
    value = () => 0,
  } = over;
  const column = (name: keyof HourColumns) =>
    Float64Array.from({ length: hourCount }, (_, hour) => value(name, hour));
  const hours = Object.fromEntries(HOUR_NAMES.map((name) => [name, column(name)])) as unknown as HourColumns;
  return {
    startUtcMs,
    hourCount,
    hours,
    members: memberCount === 0 ? null : someMembers({ hourCount, memberCount, value }),
    origin: {
      source: "primary",
      fetchedUtcMs: over.fetchedUtcMs ?? startUtcMs + 24 * HOUR_MS,
      credit: "Invented for a test",
    },
  };
}

function someMembers(size: { hourCount: number; memberCount: number; value: Value }): MemberColumns {
  const { hourCount, memberCount, value } = size;
  const column = (name: keyof HourColumns) =>
    Float64Array.from({ length: hourCount * memberCount }, (_, index) => value(name, index / memberCount));
  return {
    memberCount,
    tempC: column("tempC"),
    dewPointC: column("dewPointC"),
    rainMm: column("rainMm"),
    windMPerS: column("windMPerS"),
    radiationMjPerM2: column("radiationMjPerM2"),
  };
}
