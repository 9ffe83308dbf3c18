import { existsSync } from "node:fs";
import Database from "better-sqlite3";
import { APPLICATION_ID, STORE_VERSION } from "./migrate.ts";
import { StoreFault } from "./store-fault.ts";

export interface Checked {
  readonly version: number;
  /** Rows by table. */
  readonly counts: Readonly<Record<string, number>>;
}

/**
 * Opens a copy of a store, has the database check every page and reference, and counts the rows. The copy is made one
 * single file on the way.
 * @throws StoreFault when it is not a whole store of ours
 */
export function checkStoreFile(file: string): Checked {
  if (!existsSync(file)) throw new StoreFault("backup-not-found", { file });
  const copy = new Database(file, { fileMustExist: true });
  try {
    if (copy.pragma("application_id", { simple: true }) !== APPLICATION_ID)
      throw new StoreFault("store-not-ours");
    copy.pragma("journal_mode = DELETE");
    const isWhole = copy.pragma("integrity_check", { simple: true }) === "ok";
    const isLinked = (copy.pragma("foreign_key_check") as unknown[]).length === 0;
    if (!isWhole || !isLinked) throw new StoreFault("backup-not-whole", { isWhole, isLinked });
    return { version: versionOf(copy), counts: tableCounts(copy) };
  } finally {
    copy.close();
  }
}

function versionOf(copy: Database.Database): number {
  const version = copy.pragma("user_version", { simple: true }) as number;
  if (version > STORE_VERSION)
    throw new StoreFault("store-is-newer", { foundVersion: version, knownVersion: STORE_VERSION });
  return version;
}

function tableCounts(copy: Database.Database): Record<string, number> {
  const names = copy
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .pluck()
    .all() as string[];
  return Object.fromEntries(
    names.map((name) => [name, copy.prepare(`SELECT count(*) FROM "${name}"`).pluck().get() as number]),
  );
}
