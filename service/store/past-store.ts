import { type Kysely, sql } from "kysely";
import type { Weather } from "../../core/weather/weather.ts";
import { type PastHours, pastColumns, pastRows, VALUE_COLUMNS } from "./past-hours.ts";
import type { Tables } from "./tables.ts";

/** Rows per insert: each has 14 values and SQLite takes 32766 at a time. */
const ROWS_AT_ONCE = 1000;

/**
 * Lays hours gone by over those kept. A later pull knows an hour better, but what it does not know leaves the earlier
 * value standing, and what was only foretold never takes the place of what was told afterwards. A trigger keeps the
 * hour as it was known before.
 */
export async function layPast(
  db: Kysely<Tables>,
  told: {
    readonly siteId: string;
    readonly weather: Weather;
    readonly pullId: number;
    /** Hours of an earlier forecast, standing in where nothing was told afterwards. */
    readonly foretoldUntilUtcMs?: number;
  },
): Promise<void> {
  const rows = pastRows(told);
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
    await db
      .insertInto("past_hour")
      .values(rows.slice(from, from + ROWS_AT_ONCE))
      .onConflict((clash) =>
        clash
          .columns(["site_id", "end_utc_ms"])
          .doUpdateSet((row) => ({
            fetched_utc_ms: row.ref("excluded.fetched_utc_ms"),
            since_pull_id: row.ref("excluded.since_pull_id"),
            foretold: row.ref("excluded.foretold"),
            ...Object.fromEntries(
              VALUE_COLUMNS.map((name) => [name, row.fn.coalesce(`excluded.${name}`, `past_hour.${name}`)]),
            ),
          }))
          .where(ADDS_SOMETHING),
      )
      .execute();
}

const ADDS_SOMETHING = sql<boolean>`excluded.foretold <= past_hour.foretold AND (
  excluded.foretold < past_hour.foretold OR ${sql.raw(
    VALUE_COLUMNS.map(
      (name) => `coalesce(excluded.${name}, past_hour.${name}) IS NOT past_hour.${name}`,
    ).join(" OR "),
  )})`;

/**
 * Hours gone by from an instant on, as last known or as they were known once a certain pull had been kept; hours never
 * known hold NaN. Null when there are none.
 */
export async function pastSince(
  db: Kysely<Tables>,
  asked: { readonly siteId: string; readonly fromUtcMs: number; readonly asOfPullId?: number },
): Promise<PastHours | null> {
  const { siteId, fromUtcMs, asOfPullId } = asked;
  const now = db
    .selectFrom("past_hour")
    .select(["end_utc_ms", ...VALUE_COLUMNS])
    .where("site_id", "=", siteId)
    .where("end_utc_ms", ">", fromUtcMs);
  if (asOfPullId === undefined) return pastColumns(await now.orderBy("end_utc_ms").execute());
  const before = db
    .selectFrom("past_hour_before")
    .select(["end_utc_ms", ...VALUE_COLUMNS])
    .where("site_id", "=", siteId)
    .where("end_utc_ms", ">", fromUtcMs)
    .where("since_pull_id", "<=", asOfPullId)
    .where("until_pull_id", ">", asOfPullId);
  const rows = await now.where("since_pull_id", "<=", asOfPullId).unionAll(before).execute();
  return pastColumns(rows.sort((a, b) => a.end_utc_ms - b.end_utc_ms));
}
