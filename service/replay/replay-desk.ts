import { type ChildProcess, spawn } from "node:child_process";
import { mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { constants, setPriority } from "node:os";
import { join } from "node:path";
import process from "node:process";
import type { ReplayReport } from "./replay-report.ts";

/** A replay that the pages ask for: the house's pots in a year of their own site, or in days of another place. */
export interface DeskAsk {
  /** OWN_SITE, or the id of a place whose days come with the program. */
  readonly placeId: string;
  readonly year: number;
}

export type DeskState =
  | { readonly kind: "none" }
  | { readonly kind: "running"; readonly ask: DeskAsk; readonly doneFrac: number }
  | { readonly kind: "done"; readonly ask: DeskAsk; readonly report: ReplayReport }
  | { readonly kind: "failed"; readonly ask: DeskAsk; readonly codes: readonly string[] };

/** Where replays are asked for and their outcome is kept. */
export interface ReplayDesk {
  state(): Promise<DeskState>;
  /** Begins one unless one is under way. Parts that an earlier run had finished are taken up again. */
  start(ask: DeskAsk): void;
  close(): void;
}

const CLI = join(import.meta.dirname, "../cli.ts");
const RUNTIME = join(import.meta.dirname, "../runtime.mjs");
export const REPLAY_FOLDER = "replay";

/**
 * Runs replays one at a time in a process of their own, behind everything else, so that the pages and the morning never
 * wait for them.
 */
export function replayDesk(of: {
  dataDir: string;
  /** How the command that plays a year is written; the house's own when left out. */
  command?: (ask: DeskAsk, keepDir: string) => readonly string[];
}): ReplayDesk {
  const dir = join(of.dataDir, REPLAY_FOLDER);
  const command = of.command ?? houseReplay;
  // From the moment it is asked for, so that the page that follows already says so.
  let running: { ask: DeskAsk; child: ChildProcess | null; doneFrac: number } | null = null;
  let failed: { ask: DeskAsk; codes: readonly string[] } | null = null;
  const play = async (ask: DeskAsk) => {
    await mkdir(dir, { recursive: true, mode: 0o700 });
    const child = spawn(process.execPath, [...command(ask, join(dir, "parts"))], {
      env: { ...process.env, LEEBENCH_DATA_DIR: of.dataDir },
      stdio: ["ignore", "pipe", "pipe"],
    });
    running = { ask, child, doneFrac: 0 };
    if (child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
    const told = await outcomeOf(child, (doneFrac) => {
      running = { ask, child, doneFrac };
    });
    if (told.report === null) failed = { ask, codes: told.codes };
    else await keep(join(dir, "report.json"), JSON.stringify({ ask, report: told.report }));
  };
  return {
    async state() {
      if (running !== null) return { kind: "running", ask: running.ask, doneFrac: running.doneFrac };
      if (failed !== null) return { kind: "failed", ...failed };
      const kept = await keptReport(join(dir, "report.json"));
      return kept === null ? { kind: "none" } : { kind: "done", ...kept };
    },
    start(ask) {
      if (running !== null) return;
      failed = null;
      running = { ask, child: null, doneFrac: 0 };
      void play(ask)
        .catch(() => {
          failed = { ask, codes: ["replay-broke"] };
        })
        .finally(() => {
          running = null;
        });
    },
    close: () => void running?.child?.kill(),
  };
}

function houseReplay({ placeId, year }: DeskAsk, keepDir: string): string[] {
  const where = placeId === "own-site" ? ["--own-year", String(year)] : ["--place", placeId];
  return ["--import", RUNTIME, CLI, "replay", "--house", ...where, "--json", "--keep", keepDir];
}

async function outcomeOf(
  child: ChildProcess,
  onProgress: (doneFrac: number) => void,
): Promise<{ report: ReplayReport | null; codes: string[] }> {
  let out = "";
  const codes: string[] = [];
  child.stdout?.setEncoding("utf8").on("data", (text: string) => {
    out += text;
  });
  child.stderr?.setEncoding("utf8").on("data", (text: string) => {
    for (const line of text.split("\n")) {
      const bar = /^\[(=*)(\.*)\]/.exec(line);
      if (bar) onProgress(bar[1]!.length / Math.max(1, bar[1]!.length + bar[2]!.length));
      const code = /^\{"code":"([\w-]+)"/.exec(line)?.[1];
      if (code !== undefined) codes.push(code);
    }
  });
  const exitCode = await new Promise<number | null>((ended) => {
    child.on("error", () => ended(null)).on("close", (code) => ended(code));
  });
  if (exitCode === 0) return { report: JSON.parse(out) as ReplayReport, codes: [] };
  return { report: null, codes: codes.length > 0 ? codes : ["replay-broke"] };
}

async function keep(file: string, text: string): Promise<void> {
  await writeFile(`${file}.part`, text, { mode: 0o600 });
  await rename(`${file}.part`, file);
}

async function keptReport(file: string): Promise<{ ask: DeskAsk; report: ReplayReport } | null> {
  try {
    return JSON.parse(await readFile(file, "utf8")) as { ask: DeskAsk; report: ReplayReport };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT" || error instanceof SyntaxError) return null;
    throw error;
  }
}
