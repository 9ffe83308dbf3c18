import { closeSync, fsyncSync, openSync } from "node:fs";

/** Waits until the file's content is on the disk and not only with the system. */
export function syncFile(file: string): void {
  const handle = openSync(file, "r+");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** The same for names in a folder, after a rename. Windows cannot open folders and keeps their names by itself. */
export function syncFolder(dir: string): void {
  if (process.platform === "win32") return;
  const handle = openSync(dir, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
