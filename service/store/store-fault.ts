export type StoreFaultCode = keyof typeof LINES;

const LINES = {
  "store-full": "The disk is full. Nothing of this was kept; free some space and send it again.",
  "store-read-only":
    "The store cannot be written. Nothing of this was kept; give the service write access to its data folder.",
  "store-busy": "Another program holds the store. Nothing of this was kept; send it again in a minute.",
  "store-damaged": "The store is damaged. Stop the service and restore the last backup.",
  "store-unreachable":
    "The store cannot be opened. Check that the data folder exists and that the service may write in it.",
  "store-is-newer":
    "The store was written by a newer Leebench. Start the newer one, or restore an older backup.",
  "store-not-ours": "This file belongs to another program. Point LEEBENCH_DATA_DIR to a folder of its own.",
  "store-row-damaged":
    "A stored document cannot be read. Restore the last backup, or export and send a report.",
  "backup-not-whole": "The copy did not pass its check and was thrown away. Check the disk.",
  "backup-not-found": "There is no such backup. List the data folder's backups and name one of them.",
  "store-held": "Another Leebench works on this data folder. Stop it, or give this one a folder of its own.",
} as const;

/** Every way in which a store can be at fault. */
export const STORE_FAULT_CODES = Object.keys(LINES) as readonly StoreFaultCode[];

/** A store that cannot do what was asked. The message says what to do next; nothing was half-written. */
export class StoreFault extends Error {
  readonly code: StoreFaultCode;
  readonly data: Readonly<Record<string, unknown>>;

  constructor(code: StoreFaultCode, data: Readonly<Record<string, unknown>> = {}, cause?: unknown) {
    super(LINES[code], cause === undefined ? undefined : { cause });
    this.name = "StoreFault";
    this.code = code;
    this.data = data;
  }
}

/** Of the database by the beginning of its code, of the file system whole. */
const BY_CODE: readonly (readonly [string, StoreFaultCode])[] = [
  ["SQLITE_FULL", "store-full"],
  ["SQLITE_READONLY", "store-read-only"],
  ["SQLITE_BUSY", "store-busy"],
  ["SQLITE_LOCKED", "store-busy"],
  ["SQLITE_CORRUPT", "store-damaged"],
  ["SQLITE_NOTADB", "store-not-ours"],
  ["SQLITE_CANTOPEN", "store-unreachable"],
  ["SQLITE_IOERR", "store-unreachable"],
  ["ENOSPC", "store-full"],
  ["EDQUOT", "store-full"],
  ["EROFS", "store-read-only"],
  ["EACCES", "store-read-only"],
  ["EPERM", "store-read-only"],
  ["ENOENT", "store-unreachable"],
  ["ENOTDIR", "store-unreachable"],
  ["EIO", "store-unreachable"],
];

/** The fault that an error of the database or the file system stands for; any other error comes back as it is. */
export function asStoreFault(error: unknown): unknown {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  const known = BY_CODE.find(([prefix]) => code.startsWith(prefix));
  return known ? new StoreFault(known[1], {}, error) : error;
}
