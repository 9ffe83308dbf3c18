import { createHash } from "node:crypto";
import { mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";
import type { CellResult } from "../../core/replay/play-cell.ts";

/** Finished cells in a folder, so that a replay that was broken off goes on where it stopped. */
export interface KeptCells {
  read(name: string): Promise<CellResult | null>;
  write(name: string, cell: CellResult): Promise<void>;
}

/** Keeps nothing. */
export const NOTHING_KEPT: KeptCells = {
  read: async () => null,
  write: async () => undefined,
};

/**
 * @param about  everything besides place, seed and year that a cell's outcome hangs on; other cells are not taken for it
 */
export async function keptCellsIn(dir: string, about: unknown): Promise<KeptCells> {
  await mkdir(dir, { recursive: true });
  const mark = createHash("sha256").update(JSON.stringify(about)).digest("hex").slice(0, 12);
  const fileOf = (name: string) => join(dir, `${name}-${mark}.json`);
  return {
    async read(name) {
      try {
        return JSON.parse(await readFile(fileOf(name), "utf8")) as CellResult;
      } catch (error) {
        // Not there yet, or cut short by a crash: it is played again.
        if ((error as NodeJS.ErrnoException).code === "ENOENT" || error instanceof SyntaxError) return null;
        throw error;
      }
    },
    async write(name, cell) {
      const part = `${fileOf(name)}.part`;
      await writeFile(part, JSON.stringify(cell));
      await rename(part, fileOf(name));
    },
  };
}
