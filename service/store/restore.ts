import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { type Checked, checkStoreFile } from "./check-store-file.ts";
import { holdAlone } from "./hold-alone.ts";
import { openStore } from "./open-store.ts";
import { asStoreFault } from "./store-fault.ts";
import { LOCK_NAME, STORE_NAME } from "./store-names.ts";
import { syncFile, syncFolder } from "./sync-to-disk.ts";

export interface Restored extends Checked {
  /** Where the store that was there before has been set aside; null where there was none. */
  readonly setAside: string | null;
}

/**
 * Puts a backup in the place of the store. The backup is checked first, and the present store is set aside, not lost.
 * The service must be stopped.
 * @throws StoreFault; until the very end the present store is as it was
 */
export async function restore(input: {
  readonly backupFile: string;
  readonly dataDir: string;
  readonly nowUtcMs: number;
}): Promise<Restored> {
  const { backupFile, dataDir, nowUtcMs } = input;
  mkdirSync(dataDir, { recursive: true, mode: 0o700 });
  const letGo = holdAlone(join(dataDir, LOCK_NAME));
  const incoming = join(dataDir, `${STORE_NAME}.incoming`);
  try {
    copyBackup(backupFile, incoming);
    const checked = checkStoreFile(incoming);
    syncFile(incoming);
    const setAside = setPresentAside(dataDir, nowUtcMs);
    renameSync(incoming, join(dataDir, STORE_NAME));
    syncFolder(dataDir);
    await (await openStore(join(dataDir, STORE_NAME))).close();
    return { ...checked, setAside };
  } catch (error) {
    rmSync(incoming, { force: true });
    throw asStoreFault(error);
  } finally {
    letGo();
  }
}

function copyBackup(from: string, to: string): void {
  // A copy of a store that was in use may have its newest pages beside it.
  for (const end of ["", "-wal"]) if (existsSync(from + end)) copyFileSync(from + end, to + end);
}

/** Its newest pages stand in a second file until they are brought home; both must move as one. */
function setPresentAside(dataDir: string, nowUtcMs: number): string | null {
  const present = join(dataDir, STORE_NAME);
  if (!existsSync(present)) return null;
  bringHome(present);
  const aside = `${present}.before-${new Date(nowUtcMs).toISOString().slice(0, 19).replaceAll(":", "")}Z`;
  renameSync(present, aside);
  for (const end of ["-wal", "-shm"]) if (existsSync(present + end)) renameSync(present + end, aside + end);
  return aside;
}

/** A damaged store cannot be brought home; then its files are moved as they are. */
function bringHome(file: string): void {
  try {
    const store = new Database(file);
    store.pragma("wal_checkpoint(TRUNCATE)");
    store.close();
  } catch {
    // What cannot be opened is set aside as it is.
  }
}
