import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { type Checked, checkStoreFile } from "./check-store-file.ts";
import type { Store } from "./open-store.ts";
import { asStoreFault, StoreFault } from "./store-fault.ts";
import { syncFile, syncFolder } from "./sync-to-disk.ts";

export interface BackupMade extends Checked {
  readonly file: string;
  readonly bytes: number;
  /** Older copies that made room. */
  readonly removed: readonly string[];
}

const NAME = /^leebench-\d{4}-\d{2}-\d{2}T\d{6}Z\.db$/;

/**
 * Copies the store while it is in use, checks the copy by opening and counting it, and only then gives it its name and
 * lets the oldest go. A copy that fails its check is thrown away and the older ones stay.
 * @throws StoreFault
 */
export async function backUp(
  store: Store,
  { dir, nowUtcMs, keepCount }: { dir: string; nowUtcMs: number; keepCount: number },
): Promise<BackupMade> {
  const file = join(dir, backupName(nowUtcMs));
  const unfinished = `${file}.part`;
  try {
    mkdirSync(dir, { recursive: true, mode: 0o700 });
    clearUnfinished(dir);
    const least = countsOf(store);
    await store.raw.backup(unfinished);
    const checked = checkStoreFile(unfinished);
    const short = Object.keys(least).find((table) => (checked.counts[table] ?? 0) < least[table]!);
    if (short) throw new StoreFault("backup-not-whole", { table: short });
    syncFile(unfinished);
    renameSync(unfinished, file);
    syncFolder(dir);
    return { ...checked, file, bytes: statSync(file).size, removed: rotate(dir, keepCount) };
  } catch (error) {
    if (existsSync(dir)) clearUnfinished(dir);
    throw asStoreFault(error);
  }
}

/** Backups in the folder, newest first. */
export function listBackups(dir: string): string[] {
  if (!existsSync(dir)) return [];
  const names = readdirSync(dir).filter((name) => NAME.test(name));
  return names
    .sort()
    .reverse()
    .map((name) => join(dir, name));
}

/** What only grows between two looks: entries are never taken away. */
function countsOf(store: Store): Record<string, number> {
  const count = (table: string) => store.raw.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number;
  return Object.fromEntries(["site", "journal"].map((table) => [table, count(table)]));
}

function rotate(dir: string, keepCount: number): string[] {
  const old = listBackups(dir).slice(Math.max(1, keepCount));
  for (const file of old) rmSync(file);
  return old.map((file) => basename(file));
}

function clearUnfinished(dir: string): void {
  for (const name of readdirSync(dir))
    if (/\.db\.part(-journal|-wal|-shm)?$/.test(name)) rmSync(join(dir, name), { force: true });
}

function backupName(nowUtcMs: number): string {
  return `leebench-${new Date(nowUtcMs).toISOString().slice(0, 19).replaceAll(":", "")}Z.db`;
}
