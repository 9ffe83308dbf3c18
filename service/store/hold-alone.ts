import Database from "better-sqlite3";
import { StoreFault } from "./store-fault.ts";

/**
 * Makes sure that one service at most works on a data folder: two would send each message twice. The lock is a held
 * transaction on a file of its own, so the system lets go of it when the process ends, however it ends.
 * @returns lets go of the folder
 * @throws StoreFault when another service holds it
 */
export function holdAlone(lockFile: string): () => void {
  const lock = new Database(lockFile, { timeout: 0 });
  try {
    lock.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    lock.close();
    throw new StoreFault("store-held", {}, error);
  }
  return () => {
    lock.close();
  };
}
