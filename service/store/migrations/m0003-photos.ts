import { type Kysely, sql } from "kysely";

/** Photos stand in the store itself, so that a backup, a restore and a cut of power treat them as the journal. */
export async function m0003Photos(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE photo (
    site_id TEXT NOT NULL REFERENCES site (id),
    id TEXT NOT NULL,
    added_utc_ms INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (site_id, id)
  ) STRICT`.execute(db);
}
