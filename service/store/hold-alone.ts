import Database from "better-sqlite3";
import { asStoreFault, StoreFault } from "./store-fault.ts";

/**
 * Makes sure that one service at most works on a data folder: two would send each message twice. The lock is a held
 * transaction on a file of its own, so the system lets go of it when the process ends, however it ends.
 * @returns lets go of the folder
 * @throws StoreFault when another service holds it
 */
export function holdAlone(lockFile: string): () => void {
  const lock = openLock(lockFile);
  try {
    lock.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    lock.close();
    throw isBusy(error) ? new StoreFault("store-held", {}, error) : asStoreFault(error);
  }
  return () => {
    lock.close();
  };
}

function openLock(file: string): Database.Database {
  try {
    return new Database(file, { timeout: 0 });
  } catch (error) {
    throw asStoreFault(error);
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && "code" in error && String(error.code).startsWith("SQLITE_BUSY");
}
