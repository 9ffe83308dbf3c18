import type { Kysely } from "kysely";
import type { Weather } from "../../core/weather/weather.ts";
import { packWeather, unpackWeather } from "./pack-weather.ts";
import type { PastHours } from "./past-hours.ts";
import { layPast, pastSince } from "./past-store.ts";
import type { Tables } from "./tables.ts";

export interface WeatherStore {
  /**
   * Keeps the pull as it was known and lays its hours gone by over those kept; returns the pull's number. Where it
   * begins later than they end, the hours between are as the pull before foretold them.
   */
  save(siteId: string, weather: Weather): Promise<number>;
  /** Lays the hours of it that were over when it was fetched over those kept, without keeping it as a pull. */
  savePast(siteId: string, weather: Weather): Promise<void>;
  /** The last good weather, with its true age in `origin.fetchedUtcMs`. */
  latest(siteId: string): Promise<(Weather & { readonly pullId: number }) | null>;
  /** Where the last good weather came from and when, without the weather. */
  latestOrigin(siteId: string): Promise<Weather["origin"] | null>;
  /** A kept pull by its number, for explaining the plan that was made from it. */
  pull(pullId: number): Promise<Weather | null>;
  /**
   * Hours gone by from that instant on, as last known, or as known when a pull had just been kept; hours never known
   * hold NaN. Null when there are none.
   */
  past(siteId: string, fromUtcMs: number, asOfPullId?: number): Promise<PastHours | null>;
  /** End of the last hour gone by that is known, not only foretold. */
  pastKnownUntil(siteId: string): Promise<number | null>;
}

export function weatherStore(db: Kysely<Tables>): WeatherStore {
  return {
    async save(siteId, weather) {
      const before = await latest(db, siteId);
      const pullId = await savePull(db, { siteId, weather });
      if (before)
        await layPast(db, { siteId, weather: before, pullId, foretoldUntilUtcMs: weather.startUtcMs });
      await layPast(db, { siteId, weather, pullId });
      return pullId;
    },
    savePast: (siteId, weather) => layPast(db, { siteId, weather, pullId: 0 }),
    latest: (siteId) => latest(db, siteId),
    async latestOrigin(siteId) {
      const row = await db
        .selectFrom("weather_pull")
        .select(["source", "credit", "fetched_utc_ms", "coarse_from_utc_ms"])
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
    past: (siteId, fromUtcMs, asOfPullId) =>
      pastSince(db, { siteId, fromUtcMs, ...(asOfPullId === undefined ? {} : { asOfPullId }) }),
    async pastKnownUntil(siteId) {
      const row = await db
        .selectFrom("past_hour")
        .select((one) => one.fn.max<number | null>("end_utc_ms").as("end_utc_ms"))
        .where("site_id", "=", siteId)
        .where("foretold", "=", 0)
        .executeTakeFirst();
      return row?.end_utc_ms ?? null;
    },
  };
}

async function latest(
  db: Kysely<Tables>,
  siteId: string,
): Promise<(Weather & { readonly pullId: number }) | null> {
  const row = await db
    .selectFrom("weather_pull")
    .selectAll()
    .where("site_id", "=", siteId)
    .orderBy("id", "desc")
    .limit(1)
    .executeTakeFirst();
  return row ? { ...weatherOfRow(row), pullId: row.id } : null;
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
      coarse_from_utc_ms: weather.origin.coarseFromUtcMs ?? null,
      start_utc_ms: packed.startUtcMs,
      hour_count: packed.hourCount,
      member_count: packed.memberCount,
      body: packed.body,
    })
    .executeTakeFirstOrThrow();
  return Number(insertId);
}

interface OriginRow {
  fetched_utc_ms: number;
  source: string;
  credit: string;
  coarse_from_utc_ms: number | null;
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
  const coarseFromUtcMs = row.coarse_from_utc_ms;
  return {
    source,
    credit: row.credit,
    fetchedUtcMs: row.fetched_utc_ms,
    ...(coarseFromUtcMs === null ? {} : { coarseFromUtcMs }),
  };
}
