import { execFileSync, spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { openStore } from "../../service/store/open-store.ts";
import { STORE_NAME } from "../../service/store/store-names.ts";
import { fill } from "../service/store/bench.ts";
import { startHouseProcess } from "./house-process.ts";
import { printLines, printTable } from "./print.ts";
import { startQuickFeed } from "./quick-feed.ts";
import { tickForm } from "./tick-form.ts";

/** A real disk that gets full under the real service, and one that is read-only. Needs the right to mount. */
const disk = mkdtempSync(join(tmpdir(), "leebench-disk-"));
if (spawnSync("mount", ["-t", "tmpfs", "-o", "size=3m", "tmpfs", disk]).status !== 0) {
  printLines([
    "Left out: a small disk cannot be mounted here. The short form in the tests goes without one.",
  ]);
  rmdirSync(disk);
} else {
  try {
    process.exitCode = (await drill()) ? 0 : 1;
  } finally {
    execFileSync("umount", ["-l", disk]);
    rmdirSync(disk);
  }
}

async function drill(): Promise<boolean> {
  const store = await openStore(join(disk, STORE_NAME));
  await fill(store);
  await store.close();
  const feed = await startQuickFeed(Date.now);
  const env = environment(feed.url);
  const full = await fillUp(env);
  await feed.close();
  const readOnly = startReadOnly(env);
  printTable([{ ...full, readOnly }]);
  return full.faults === 0 && full.refused > 0 && readOnly.startsWith("2 ");
}

async function fillUp(env: Record<string, string>) {
  const { child, url } = await startHouseProcess(env);
  const send = (id: string) =>
    fetch(new URL("done", url), {
      method: "POST",
      body: tickForm({ entryId: id, potId: "p1" }),
      redirect: "manual",
    });
  const acknowledged: string[] = [];
  const refused: string[] = [];
  let line = "";
  for (let count = 0; count < 5000 && refused.length < 5; count++) {
    const id = randomUUID();
    const answer = await send(id);
    if (answer.status === 303) acknowledged.push(id);
    else {
      refused.push(id);
      line = `${answer.status} ${(await answer.text()).trim()}`;
    }
  }
  const duringFaults = lookFor({ acknowledged, refused });
  const pageWhileFull = (await fetch(url)).status;
  execFileSync("mount", ["-o", "remount,size=20m", disk]);
  for (const id of refused) if ((await send(id)).status === 303) acknowledged.push(id);
  const gone = once(child, "exit");
  child.kill("SIGKILL");
  await gone;
  const faults = duringFaults + lookFor({ acknowledged, refused: [] });
  return { acknowledged: acknowledged.length, refused: refused.length, line, pageWhileFull, faults };
}

function lookFor(told: { acknowledged: readonly string[]; refused: readonly string[] }): number {
  const raw = new Database(join(disk, STORE_NAME));
  const known = new Set(raw.prepare("SELECT id FROM journal").pluck().all() as string[]);
  const isWhole = raw.pragma("integrity_check", { simple: true }) === "ok";
  raw.close();
  const lost = told.acknowledged.filter((id) => !known.has(id)).length;
  const half = told.refused.filter((id) => known.has(id)).length;
  return lost + half + (isWhole ? 0 : 1);
}

function startReadOnly(env: Record<string, string>): string {
  execFileSync("mount", ["-o", "remount,ro", disk]);
  const root = join(import.meta.dirname, "../..");
  const args = ["--import", join(root, "service/runtime.mjs"), join(root, "service/main.ts")];
  const { LEEBENCH_DRILL_CLOCK: _, ...own } = env;
  const { status, stderr } = spawnSync(process.execPath, args, { env: own, timeout: 120_000 });
  return `${status} ${stderr.toString().trim()}`;
}

function environment(feedUrl: string): Record<string, string> {
  return {
    PATH: process.env.PATH ?? "",
    LEEBENCH_DATA_DIR: disk,
    LEEBENCH_PORT: "0",
    LEEBENCH_FEED_URL: feedUrl,
    LEEBENCH_ENSEMBLE_URL: feedUrl,
    LEEBENCH_GEOCODING_URL: feedUrl,
    LEEBENCH_LOG_LEVEL: "silent",
    LEEBENCH_DRILL_CLOCK: JSON.stringify({ realMs: Date.now(), simulatedMs: Date.now(), speed: 1 }),
  };
}
