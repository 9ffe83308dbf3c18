import { type Kysely, sql } from "kysely";

const VALUES = `temp_c REAL, dew_point_c REAL, rain_mm REAL, wind_m_per_s REAL, gust_m_per_s REAL,
    radiation_mj_per_m2 REAL, cloud_frac REAL, weather_code REAL, feed_et0_mm REAL, feed_rain_chance_frac REAL`;
const VALUE_NAMES = VALUES.replaceAll(" REAL", "");

/**
 * What each plan was made from, so that a past plan can be reckoned again: the collection as it stood, how far the
 * journal went, and every hour gone by as it was known at that pull, however it was corrected later.
 */
export async function m0005PlanInputs(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE plan_input (
    plan_id INTEGER PRIMARY KEY REFERENCES plan (id) ON DELETE CASCADE,
    program TEXT NOT NULL,
    journal_seq INTEGER NOT NULL,
    previous_plan_id INTEGER,
    body BLOB NOT NULL
  ) STRICT`.execute(db);
  await sql`ALTER TABLE weather_pull ADD COLUMN coarse_from_utc_ms INTEGER`.execute(db);
  await sql`ALTER TABLE past_hour ADD COLUMN since_pull_id INTEGER NOT NULL DEFAULT 0`.execute(db);
  await sql`ALTER TABLE past_hour ADD COLUMN foretold INTEGER NOT NULL DEFAULT 0 CHECK (foretold IN (0, 1))`.execute(
    db,
  );
  await sql`CREATE TABLE past_hour_before (
    site_id TEXT NOT NULL REFERENCES site (id),
    end_utc_ms INTEGER NOT NULL,
    until_pull_id INTEGER NOT NULL,
    since_pull_id INTEGER NOT NULL,
    ${sql.raw(VALUES)},
    PRIMARY KEY (site_id, end_utc_ms, until_pull_id)
  ) STRICT, WITHOUT ROWID`.execute(db);
  await sql`CREATE TRIGGER past_hour_keeps_before BEFORE UPDATE ON past_hour BEGIN
    INSERT OR IGNORE INTO past_hour_before (site_id, end_utc_ms, until_pull_id, since_pull_id, ${sql.raw(VALUE_NAMES)})
    SELECT site_id, end_utc_ms, NEW.since_pull_id, since_pull_id, ${sql.raw(VALUE_NAMES)} FROM past_hour
    WHERE site_id = OLD.site_id AND end_utc_ms = OLD.end_utc_ms;
  END`.execute(db);
}
