import { type Kysely, sql } from "kysely";

/** Who gets messages, by which ways; and what a message carries for its way besides its text. */
export async function m0002People(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE person (
    id TEXT PRIMARY KEY,
    document TEXT NOT NULL CHECK (json_valid(document)),
    updated_utc_ms INTEGER NOT NULL
  ) STRICT`.execute(db);
  await sql`CREATE TABLE channel (
    id TEXT PRIMARY KEY,
    person_id TEXT NOT NULL REFERENCES person (id) ON DELETE CASCADE,
    document TEXT NOT NULL CHECK (json_valid(document)),
    updated_utc_ms INTEGER NOT NULL
  ) STRICT`.execute(db);
  await sql`CREATE INDEX channel_by_person ON channel (person_id)`.execute(db);
  await sql`ALTER TABLE outbox ADD COLUMN extra TEXT CHECK (extra IS NULL OR json_valid(extra))`.execute(db);
}
