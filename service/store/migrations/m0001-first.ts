import { type Kysely, sql } from "kysely";

const DOCUMENT_TABLES = ["spot", "mix", "pot", "own_component", "own_group"];

/** The first shape of the store. Never edited once released: later shapes are further steps. */
export async function m0001First(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE house (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT`.execute(db);
  await sql`CREATE TABLE site (
    id TEXT PRIMARY KEY,
    document TEXT NOT NULL CHECK (json_valid(document)),
    updated_utc_ms INTEGER NOT NULL
  ) STRICT`.execute(db);
  for (const name of DOCUMENT_TABLES) await documentTable(name).execute(db);
  await sql`CREATE TABLE site_settings (
    site_id TEXT PRIMARY KEY REFERENCES site (id),
    document TEXT NOT NULL CHECK (json_valid(document)),
    updated_utc_ms INTEGER NOT NULL
  ) STRICT`.execute(db);
  await journalTable(db);
  await weatherTables(db);
  await planTables(db);
  await runTables(db);
}

function documentTable(name: string) {
  return sql`CREATE TABLE ${sql.table(name)} (
    site_id TEXT NOT NULL REFERENCES site (id),
    id TEXT NOT NULL,
    document TEXT NOT NULL CHECK (json_valid(document)),
    updated_utc_ms INTEGER NOT NULL,
    PRIMARY KEY (site_id, id)
  ) STRICT, WITHOUT ROWID`;
}

async function journalTable(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE journal (
    seq INTEGER PRIMARY KEY AUTOINCREMENT,
    site_id TEXT NOT NULL REFERENCES site (id),
    id TEXT NOT NULL,
    at_utc_ms INTEGER NOT NULL,
    recorded_utc_ms INTEGER NOT NULL,
    pot_id TEXT,
    body TEXT NOT NULL CHECK (json_valid(body)),
    UNIQUE (site_id, id)
  ) STRICT`.execute(db);
  await sql`CREATE INDEX journal_by_site ON journal (site_id, seq)`.execute(db);
  for (const deed of ["UPDATE", "DELETE"])
    await sql`CREATE TRIGGER ${sql.raw(`journal_no_${deed.toLowerCase()}`)} BEFORE ${sql.raw(deed)} ON journal
      BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END`.execute(db);
}

async function weatherTables(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE weather_pull (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    site_id TEXT NOT NULL REFERENCES site (id),
    fetched_utc_ms INTEGER NOT NULL,
    source TEXT NOT NULL,
    credit TEXT NOT NULL,
    start_utc_ms INTEGER NOT NULL,
    hour_count INTEGER NOT NULL,
    member_count INTEGER NOT NULL,
    body BLOB NOT NULL
  ) STRICT`.execute(db);
  await sql`CREATE INDEX weather_pull_by_site ON weather_pull (site_id, id)`.execute(db);
  await sql`CREATE TABLE past_hour (
    site_id TEXT NOT NULL REFERENCES site (id),
    end_utc_ms INTEGER NOT NULL,
    fetched_utc_ms INTEGER NOT NULL,
    temp_c REAL, dew_point_c REAL, rain_mm REAL, wind_m_per_s REAL, gust_m_per_s REAL,
    radiation_mj_per_m2 REAL, cloud_frac REAL, weather_code REAL, feed_et0_mm REAL, feed_rain_chance_frac REAL,
    PRIMARY KEY (site_id, end_utc_ms)
  ) STRICT, WITHOUT ROWID`.execute(db);
}

async function planTables(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE plan (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    site_id TEXT NOT NULL REFERENCES site (id),
    for_day TEXT NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('morning', 'amendment', 'asked', 'watch')),
    made_utc_ms INTEGER NOT NULL,
    late INTEGER NOT NULL CHECK (late IN (0, 1)),
    weather_pull_id INTEGER REFERENCES weather_pull (id),
    document TEXT NOT NULL CHECK (json_valid(document))
  ) STRICT`.execute(db);
  await sql`CREATE UNIQUE INDEX one_morning_a_day ON plan (site_id, for_day) WHERE kind = 'morning'`.execute(
    db,
  );
  await sql`CREATE INDEX plan_by_site ON plan (site_id, id)`.execute(db);
  await sql`CREATE INDEX plan_by_pull ON plan (weather_pull_id)`.execute(db);
  await sql`CREATE TABLE outbox (
    id TEXT PRIMARY KEY,
    site_id TEXT NOT NULL REFERENCES site (id),
    plan_id INTEGER REFERENCES plan (id),
    channel TEXT NOT NULL,
    subject TEXT NOT NULL,
    body TEXT NOT NULL,
    created_utc_ms INTEGER NOT NULL,
    keep_trying_until_utc_ms INTEGER NOT NULL,
    state TEXT NOT NULL CHECK (state IN ('waiting', 'sent', 'given-up')),
    tries INTEGER NOT NULL,
    next_try_utc_ms INTEGER NOT NULL,
    settled_utc_ms INTEGER,
    last_fault TEXT
  ) STRICT`.execute(db);
  await sql`CREATE INDEX outbox_waiting ON outbox (next_try_utc_ms) WHERE state = 'waiting'`.execute(db);
  await sql`CREATE INDEX outbox_by_site ON outbox (site_id, created_utc_ms)`.execute(db);
  await sql`CREATE INDEX outbox_by_plan ON outbox (plan_id)`.execute(db);
}

async function runTables(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE run (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    site_id TEXT REFERENCES site (id),
    job TEXT NOT NULL,
    slot TEXT NOT NULL,
    started_utc_ms INTEGER NOT NULL,
    ended_utc_ms INTEGER NOT NULL,
    outcome TEXT NOT NULL CHECK (outcome IN ('done', 'failed')),
    late INTEGER NOT NULL CHECK (late IN (0, 1)),
    detail TEXT NOT NULL
  ) STRICT`.execute(db);
  await sql`CREATE INDEX run_by_job ON run (job, site_id, id)`.execute(db);
  for (const name of ["feed_state", "watch_state"])
    await sql`CREATE TABLE ${sql.table(name)} (
      site_id TEXT PRIMARY KEY REFERENCES site (id),
      document TEXT NOT NULL CHECK (json_valid(document))
    ) STRICT`.execute(db);
}
