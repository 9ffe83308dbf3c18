import Database from "better-sqlite3";
import { Kysely, SqliteDialect } from "kysely";
import { houseId } from "./house-id.ts";
import { migrate } from "./migrate.ts";
import { asStoreFault } from "./store-fault.ts";
import { type StoreQueries, storeQueries } from "./store-queries.ts";
import type { Tables } from "./tables.ts";

export interface Store extends StoreQueries {
  readonly file: string;
  /** Random name of this store, the same for life. */
  readonly houseId: string;
  /** Everything done through `step` is kept together or not at all. Use only `step` inside: the store itself waits. */
  together<T>(work: (step: StoreQueries) => Promise<T>): Promise<T>;
  /** For backup, retention and checks, which need the connection or the tables themselves. */
  readonly raw: Database.Database;
  readonly db: Kysely<Tables>;
  close(): Promise<void>;
}

/** Longest wait for another process that is writing, such as a command beside the service. */
const BUSY_WAIT_MS = 5000;

/**
 * Opens the store file, making it when there is none, and brings it to the newest version.
 * @param file  path; ":memory:" for one that vanishes
 * @throws StoreFault when it cannot be opened or is not ours
 */
export async function openStore(
  file: string,
  { now = Date.now }: { now?: () => number } = {},
): Promise<Store> {
  try {
    const raw = openFile(file);
    const db = new Kysely<Tables>({ dialect: new SqliteDialect({ database: writingAtOnce(raw) }) });
    await migrate(db as Kysely<unknown>).catch(async (error) => {
      await db.destroy();
      throw error;
    });
    return storeOn({ db, raw, file, now });
  } catch (error) {
    throw asStoreFault(error);
  }
}

function storeOn({ db, raw, file, now }: Pick<Store, "db" | "raw" | "file"> & { now: () => number }): Store {
  return {
    ...storeQueries(db, now),
    file,
    houseId: houseId(raw),
    raw,
    db,
    async together(work) {
      try {
        return await db.transaction().execute((step) => work(storeQueries(step, now)));
      } catch (error) {
        throw asStoreFault(error);
      }
    },
    close: () => db.destroy(),
  };
}

function openFile(file: string): Database.Database {
  const raw = new Database(file, { timeout: BUSY_WAIT_MS });
  raw.pragma("journal_mode = WAL");
  // FULL: what was acknowledged survives a cut of power, not only the end of the process.
  raw.pragma("synchronous = FULL");
  raw.pragma("foreign_keys = ON");
  return raw;
}

/**
 * Transactions take the write lock when they begin. A plain "begin" takes it at the first write, and fails at once,
 * whatever the wait, when another process has written since the first read.
 */
function writingAtOnce(raw: Database.Database) {
  return {
    prepare: (text: string) => raw.prepare(text === "begin" ? "begin immediate" : text),
    close: () => {
      raw.close();
    },
  };
}
