import { type Kysely, sql } from "kysely";

/** Who may sign in, on which device they are signed in, and which scripts may ask. Secrets stand here as digests only. */
export async function m0004Access(db: Kysely<unknown>): Promise<void> {
  await sql`CREATE TABLE account (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    role TEXT NOT NULL CHECK (role IN ('owner', 'helper', 'viewer')),
    passphrase TEXT,
    code_digest TEXT,
    code_ends_utc_ms INTEGER,
    created_utc_ms INTEGER NOT NULL
  ) STRICT`.execute(db);
  await sql`CREATE TABLE session (
    digest TEXT PRIMARY KEY,
    account_id TEXT NOT NULL,
    stamp TEXT NOT NULL,
    device TEXT NOT NULL,
    created_utc_ms INTEGER NOT NULL,
    seen_utc_ms INTEGER NOT NULL
  ) STRICT, WITHOUT ROWID`.execute(db);
  await sql`CREATE INDEX session_by_account ON session (account_id)`.execute(db);
  await sql`CREATE TABLE api_token (
    id TEXT PRIMARY KEY,
    digest TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    role TEXT NOT NULL CHECK (role IN ('owner', 'helper', 'viewer')),
    created_utc_ms INTEGER NOT NULL,
    ends_utc_ms INTEGER NOT NULL,
    used_utc_ms INTEGER
  ) STRICT`.execute(db);
  await sql`CREATE TABLE kept_answer (
    asker TEXT NOT NULL,
    key TEXT NOT NULL,
    request_digest TEXT NOT NULL,
    answer TEXT NOT NULL CHECK (json_valid(answer)),
    made_utc_ms INTEGER NOT NULL,
    PRIMARY KEY (asker, key)
  ) STRICT, WITHOUT ROWID`.execute(db);
}
