import { readdirSync, readFileSync } from "node:fs";

export interface ProcessSize {
  readonly residentMb: number;
  readonly openFiles: number;
}

const PAGE_BYTES = 4096;

/** Memory and open files of a process, as Linux tells them; null elsewhere. */
export function processSize(pid: number): ProcessSize | null {
  try {
    const [, resident] = readFileSync(`/proc/${pid}/statm`, "utf8").split(" ");
    return {
      residentMb: Math.round((Number(resident) * PAGE_BYTES) / 2 ** 20),
      openFiles: readdirSync(`/proc/${pid}/fd`).length,
    };
  } catch {
    return null;
  }
}
