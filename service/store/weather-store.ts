import type { Kysely } from "kysely";
import type { Weather } from "../../core/weather/weather.ts";
import { packWeather, unpackWeather } from "./pack-weather.ts";
import { type PastHours, pastColumns, pastRows } from "./past-hours.ts";
import type { Tables } from "./tables.ts";

export interface WeatherStore {
  /** Keeps the pull as it was known and lays its hours gone by over those kept; returns the pull's number. */
  save(siteId: string, weather: Weather): Promise<number>;
  /** Lays the hours of it that were over when it was fetched over those kept, without keeping it as a pull. */
  savePast(siteId: string, weather: Weather): Promise<void>;
  /** The last good weather, with its true age in `origin.fetchedUtcMs`. */
  latest(siteId: string): Promise<(Weather & { readonly pullId: number }) | null>;
  /** Where the last good weather came from and when, without the weather. */
  latestOrigin(siteId: string): Promise<Weather["origin"] | null>;
  /** A kept pull by its number, for explaining the plan that was made from it. */
  pull(pullId: number): Promise<Weather | null>;
  /** Hours gone by from that instant on, as last known; hours never known hold NaN. Null when there are none. */
  past(siteId: string, fromUtcMs: number): Promise<PastHours | null>;
  /** End of the last hour gone by that is known. */
  pastKnownUntil(siteId: string): Promise<number | null>;
}

/** Rows per insert: each has 13 values and SQLite takes 32766 at a time. */
const ROWS_AT_ONCE = 1000;

export function weatherStore(db: Kysely<Tables>): WeatherStore {
  return {
    async save(siteId, weather) {
      const pullId = await savePull(db, { siteId, weather });
      await savePast(db, { siteId, weather });
      return pullId;
    },
    savePast: (siteId, weather) => savePast(db, { siteId, weather }),
    async latest(siteId) {
      const row = await db
        .selectFrom("weather_pull")
        .selectAll()
        .where("site_id", "=", siteId)
        .orderBy("id", "desc")
        .limit(1)
        .executeTakeFirst();
      return row ? { ...weatherOfRow(row), pullId: row.id } : null;
    },
    async latestOrigin(siteId) {
      const row = await db
        .selectFrom("weather_pull")
        .select(["source", "credit", "fetched_utc_ms"])
        .where("site_id", "=", siteId)
        .orderBy("id", "desc")
        .limit(1)
        .executeTakeFirst();
      return row ? originOfRow(row) : null;
    },
    async pull(pullId) {
      const row = await db.selectFrom("weather_pull").selectAll().where("id", "=", pullId).executeTakeFirst();
      return row ? weatherOfRow(row) : null;
    },
    async past(siteId, fromUtcMs) {
      const rows = await db
        .selectFrom("past_hour")
        .selectAll()
        .where("site_id", "=", siteId)
        .where("end_utc_ms", ">", fromUtcMs)
        .orderBy("end_utc_ms")
        .execute();
      return pastColumns(rows);
    },
    async pastKnownUntil(siteId) {
      const row = await db
        .selectFrom("past_hour")
        .select((one) => one.fn.max<number | null>("end_utc_ms").as("end_utc_ms"))
        .where("site_id", "=", siteId)
        .executeTakeFirst();
      return row?.end_utc_ms ?? null;
    },
  };
}

async function savePull(
  db: Kysely<Tables>,
  { siteId, weather }: { siteId: string; weather: Weather },
): Promise<number> {
  const packed = packWeather(weather);
  const { insertId } = await db
    .insertInto("weather_pull")
    .values({
      site_id: siteId,
      fetched_utc_ms: weather.origin.fetchedUtcMs,
      source: weather.origin.source,
      credit: weather.origin.credit,
      start_utc_ms: packed.startUtcMs,
      hour_count: packed.hourCount,
      member_count: packed.memberCount,
      body: packed.body,
    })
    .executeTakeFirstOrThrow();
  return Number(insertId);
}

/** A later pull knows an hour gone by better, but what it does not know leaves the earlier value standing. */
async function savePast(
  db: Kysely<Tables>,
  { siteId, weather }: { siteId: string; weather: Weather },
): Promise<void> {
  const rows = pastRows(siteId, weather);
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
    await db
      .insertInto("past_hour")
      .values(rows.slice(from, from + ROWS_AT_ONCE))
      .onConflict((clash) =>
        clash.columns(["site_id", "end_utc_ms"]).doUpdateSet((row) => ({
          fetched_utc_ms: row.ref("excluded.fetched_utc_ms"),
          temp_c: row.fn.coalesce("excluded.temp_c", "past_hour.temp_c"),
          dew_point_c: row.fn.coalesce("excluded.dew_point_c", "past_hour.dew_point_c"),
          rain_mm: row.fn.coalesce("excluded.rain_mm", "past_hour.rain_mm"),
          wind_m_per_s: row.fn.coalesce("excluded.wind_m_per_s", "past_hour.wind_m_per_s"),
          gust_m_per_s: row.fn.coalesce("excluded.gust_m_per_s", "past_hour.gust_m_per_s"),
          radiation_mj_per_m2: row.fn.coalesce(
            "excluded.radiation_mj_per_m2",
            "past_hour.radiation_mj_per_m2",
          ),
          cloud_frac: row.fn.coalesce("excluded.cloud_frac", "past_hour.cloud_frac"),
          weather_code: row.fn.coalesce("excluded.weather_code", "past_hour.weather_code"),
          feed_et0_mm: row.fn.coalesce("excluded.feed_et0_mm", "past_hour.feed_et0_mm"),
          feed_rain_chance_frac: row.fn.coalesce(
            "excluded.feed_rain_chance_frac",
            "past_hour.feed_rain_chance_frac",
          ),
        })),
      )
      .execute();
}

interface OriginRow {
  fetched_utc_ms: number;
  source: string;
  credit: string;
}

interface PullRow extends OriginRow {
  start_utc_ms: number;
  hour_count: number;
  member_count: number;
  body: Uint8Array;
}

function weatherOfRow(row: PullRow): Weather {
  return unpackWeather({
    startUtcMs: row.start_utc_ms,
    hourCount: row.hour_count,
    memberCount: row.member_count,
    origin: originOfRow(row),
    body: row.body,
  });
}

function originOfRow(row: OriginRow): Weather["origin"] {
  const source = row.source as Weather["origin"]["source"];
  return { source, credit: row.credit, fetchedUtcMs: row.fetched_utc_ms };
}
