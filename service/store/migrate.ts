import { type Kysely, sql } from "kysely";
import { STEPS, type Step } from "./migrations/steps.ts";
import { StoreFault } from "./store-fault.ts";

/** Marks a file as ours in its header, so that no other program's database is ever migrated ("LEEB"). */
export const APPLICATION_ID = 0x4c454542;

/**
 * Brings the store to the newest version, each step and its version number in one transaction: a cut of power leaves
 * the version before or after, never between. Kysely's own migrator runs SQLite steps outside a transaction.
 * @returns the version found and the version reached
 * @throws StoreFault when the file is another program's or newer than this program
 */
export async function migrate(
  db: Kysely<unknown>,
  steps: readonly Step[] = STEPS,
): Promise<{ from: number; to: number }> {
  const from = await readPragma(db, "user_version");
  await refuseStrangers(db, from);
  for (let version = from; version < steps.length; version++) {
    await db.transaction().execute(async (step) => {
      await steps[version]!(step);
      await sql`PRAGMA user_version = ${sql.raw(String(version + 1))}`.execute(step);
      await sql`PRAGMA application_id = ${sql.raw(String(APPLICATION_ID))}`.execute(step);
    });
  }
  return { from, to: steps.length };
}

/** Newest version that this program knows. */
export const STORE_VERSION = STEPS.length;

async function refuseStrangers(db: Kysely<unknown>, version: number): Promise<void> {
  if (version > STEPS.length)
    throw new StoreFault("store-is-newer", { foundVersion: version, knownVersion: STEPS.length });
  const ours = (await readPragma(db, "application_id")) === APPLICATION_ID;
  const tables = await sql`SELECT 1 FROM sqlite_schema LIMIT 1`.execute(db);
  if (!ours && tables.rows.length > 0) throw new StoreFault("store-not-ours");
}

async function readPragma(db: Kysely<unknown>, name: string): Promise<number> {
  const { rows } = await sql<Record<string, number>>`PRAGMA ${sql.raw(name)}`.execute(db);
  return rows[0]?.[name] ?? 0;
}
