import { createReadStream, statSync } from "node:fs";
import { basename } from "node:path";
import { Readable } from "node:stream";
import { listBackups } from "./backup.ts";

/** Media type of a copy (IANA registry). */
export const COPY_TYPE = "application/vnd.sqlite3";

export interface KeptCopy {
  readonly name: string;
  readonly bytes: number;
}

/** The copies in the folder, newest first; none where none are made. */
export function keptCopies(dir: string | null): KeptCopy[] {
  return filesIn(dir).map((file) => ({ name: basename(file), bytes: statSync(file).size }));
}

/** A copy as it is read; null for a name that is none of them. */
export function copyStream(dir: string | null, name: string): ReadableStream | null {
  const file = filesIn(dir).find((path) => basename(path) === name);
  return file === undefined ? null : (Readable.toWeb(createReadStream(file)) as ReadableStream);
}

function filesIn(dir: string | null): string[] {
  return dir === null ? [] : listBackups(dir);
}
