import { existsSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { Kysely, type SqliteDatabase, SqliteDialect, type SqliteStatement } from "kysely";
import { type HouseValues, houseValues } from "./house-values.ts";
import { migrate } from "./migrate.ts";
import { type KeepingTimes, type LetGo, letGoOfOld } from "./retention.ts";
import { asStoreFault, StoreFault } from "./store-fault.ts";
import { type StoreQueries, storeQueries } from "./store-queries.ts";
import type { Tables } from "./tables.ts";

export interface Store extends StoreQueries {
  readonly file: string;
  /** Random name of this store, the same for life. */
  readonly houseId: string;
  readonly house: HouseValues;
  /** Everything done through `step` is kept together or not at all. Use only `step` inside: the store itself waits. */
  together<T>(work: (step: StoreQueries) => Promise<T>): Promise<T>;
  letGoOfOld(times: KeepingTimes): Promise<LetGo>;
  /** For backup and checks, which need the connection or the tables themselves. */
  readonly raw: Database.Database;
  readonly db: Kysely<Tables>;
  close(): Promise<void>;
}

/** Statements kept ready: the jobs ask the same few every minute. Long ones are inserts of many rows, each its own. */
const KNOWN_STATEMENTS = 300;
const LONGEST_KNOWN_CHARS = 2000;
const IN_MEMORY = ":memory:";
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
  const house = houseValues(raw);
  return {
    ...storeQueries(db, now),
    file,
    houseId: house.id,
    house,
    raw,
    db,
    together: (work) => db.transaction().execute((step) => work(storeQueries(step, now))),
    letGoOfOld: (times) => db.transaction().execute((step) => letGoOfOld(step, times)),
    close: () => db.destroy(),
  };
}

function openFile(file: string): Database.Database {
  if (file !== IN_MEMORY && !existsSync(dirname(file))) throw new StoreFault("store-unreachable", { file });
  const raw = new Database(file, { timeout: BUSY_WAIT_MS });
  raw.pragma("journal_mode = WAL");
  // FULL: what was acknowledged survives a cut of power, not only the end of the process.
  raw.pragma("synchronous = FULL");
  raw.pragma("foreign_keys = ON");
  return raw;
}

/**
 * What the query builder needs of the file. Transactions take the write lock when they begin: a plain "begin" takes it at
 * the first write, and fails at once, whatever the wait, when another program has written since the first read.
 */
function writingAtOnce(raw: Database.Database): SqliteDatabase {
  const known = new Map<string, SqliteStatement>();
  const prepare = (text: string) => {
    const statement = named(raw.prepare(text === "begin" ? "begin immediate" : text));
    if (known.size < KNOWN_STATEMENTS && text.length < LONGEST_KNOWN_CHARS) known.set(text, statement);
    return statement;
  };
  // A full disk ends a transaction by itself; a roll-back after that would fail and hide the reason.
  const overAlready = { ...prepare("SELECT 1 WHERE 0"), reader: true };
  return {
    prepare: (text) =>
      text === "rollback" && !raw.inTransaction ? overAlready : (known.get(text) ?? prepare(text)),
    close: () => {
      raw.close();
    },
  };
}

/** The statement, its errors as store faults. */
function named(statement: Database.Statement): SqliteStatement {
  return {
    reader: statement.reader,
    all: (values) => withFaults(() => statement.all(values)),
    run: (values) => withFaults(() => statement.run(values)),
    iterate: (values) => statement.iterate(values) as IterableIterator<unknown>,
  };
}

function withFaults<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    throw asStoreFault(error);
  }
}
