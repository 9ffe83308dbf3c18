import type { Insertable, Selectable } from "kysely";
import { HOUR_MS, type HourColumns, type Weather } from "../../core/weather/weather.ts";
import type { Tables } from "./tables.ts";

export interface PastHours {
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly hours: HourColumns;
}

type PastRow = Selectable<Tables["past_hour"]>;
type ValueColumn = (typeof COLUMNS)[keyof HourColumns];

const COLUMNS = {
  tempC: "temp_c",
  dewPointC: "dew_point_c",
  rainMm: "rain_mm",
  windMPerS: "wind_m_per_s",
  gustMPerS: "gust_m_per_s",
  radiationMjPerM2: "radiation_mj_per_m2",
  cloudFrac: "cloud_frac",
  weatherCode: "weather_code",
  feedEt0Mm: "feed_et0_mm",
  feedRainChanceFrac: "feed_rain_chance_frac",
} as const satisfies Record<keyof HourColumns, keyof PastRow>;

const NAMES = Object.keys(COLUMNS) as (keyof HourColumns)[];
export const VALUE_COLUMNS: readonly ValueColumn[] = Object.values(COLUMNS);

/**
 * The hours of a pull that were over when it was fetched, as rows; with `foretoldUntilUtcMs` those after that, which it
 * foretold. Hours of which nothing is known make none.
 */
export function pastRows(told: {
  readonly siteId: string;
  readonly weather: Weather;
  readonly pullId: number;
  readonly foretoldUntilUtcMs?: number;
}): Insertable<Tables["past_hour"]>[] {
  const { siteId, weather, pullId, foretoldUntilUtcMs } = told;
  const { startUtcMs, origin, hourCount } = weather;
  const until = (utcMs: number) =>
    Math.max(0, Math.min(hourCount, Math.floor((utcMs - startUtcMs) / HOUR_MS)));
  const over = until(origin.fetchedUtcMs);
  const isForetold = foretoldUntilUtcMs !== undefined;
  const [from, to] = isForetold ? [over, until(foretoldUntilUtcMs)] : [0, over];
  return Array.from({ length: Math.max(0, to - from) }, (_, step) => ({
    site_id: siteId,
    end_utc_ms: startUtcMs + (from + step + 1) * HOUR_MS,
    fetched_utc_ms: origin.fetchedUtcMs,
    since_pull_id: pullId,
    foretold: isForetold ? 1 : 0,
    ...valuesAt(weather.hours, from + step),
  })).filter((row) => NAMES.some((name) => row[COLUMNS[name]] !== null));
}

/** Rows in time order as columns on one unbroken axis; gaps hold NaN. */
export function pastColumns(rows: readonly Pick<PastRow, "end_utc_ms" | ValueColumn>[]): PastHours | null {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return null;
  const startUtcMs = first.end_utc_ms - HOUR_MS;
  const hourCount = (last.end_utc_ms - startUtcMs) / HOUR_MS;
  const hours = emptyColumns(hourCount);
  for (const row of rows) {
    const index = (row.end_utc_ms - startUtcMs) / HOUR_MS - 1;
    for (const name of NAMES) hours[name][index] = row[COLUMNS[name]] ?? Number.NaN;
  }
  return { startUtcMs, hourCount, hours };
}

/** The weather with hours kept from earlier pulls set before its own, so that pots can be replayed from further back. */
export function withPast(weather: Weather, past: PastHours | null): Weather {
  const extra = past ? Math.round((weather.startUtcMs - past.startUtcMs) / HOUR_MS) : 0;
  if (!past || extra <= 0) return weather;
  const hourCount = extra + weather.hourCount;
  const hours = emptyColumns(hourCount);
  for (const name of NAMES) {
    hours[name].set(past.hours[name].subarray(0, extra));
    hours[name].set(weather.hours[name], extra);
  }
  return { ...weather, startUtcMs: past.startUtcMs, hourCount, hours, members: shifted(weather, extra) };
}

function shifted({ members }: Weather, extraHours: number): Weather["members"] {
  if (!members) return null;
  const { memberCount } = members;
  const later = (column: Float64Array) => {
    const out = new Float64Array(extraHours * memberCount + column.length).fill(Number.NaN);
    out.set(column, extraHours * memberCount);
    return out;
  };
  return {
    memberCount,
    tempC: later(members.tempC),
    dewPointC: later(members.dewPointC),
    rainMm: later(members.rainMm),
    windMPerS: later(members.windMPerS),
    radiationMjPerM2: later(members.radiationMjPerM2),
  };
}

function valuesAt(hours: HourColumns, index: number) {
  const known = (name: keyof HourColumns) => {
    const value = hours[name][index];
    return value === undefined || Number.isNaN(value) ? null : value;
  };
  return {
    temp_c: known("tempC"),
    dew_point_c: known("dewPointC"),
    rain_mm: known("rainMm"),
    wind_m_per_s: known("windMPerS"),
    gust_m_per_s: known("gustMPerS"),
    radiation_mj_per_m2: known("radiationMjPerM2"),
    cloud_frac: known("cloudFrac"),
    weather_code: known("weatherCode"),
    feed_et0_mm: known("feedEt0Mm"),
    feed_rain_chance_frac: known("feedRainChanceFrac"),
  };
}

function emptyColumns(hourCount: number): Record<keyof HourColumns, Float64Array> {
  return Object.fromEntries(
    NAMES.map((name) => [name, new Float64Array(hourCount).fill(Number.NaN)]),
  ) as Record<keyof HourColumns, Float64Array>;
}
