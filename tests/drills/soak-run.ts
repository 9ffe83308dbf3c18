import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { digestOf, newSecret } from "../../service/access/secret-text.ts";
import { openStore } from "../../service/store/open-store.ts";
import { STORE_NAME } from "../../service/store/store-names.ts";
import { fill, pot } from "../service/store/bench.ts";
import { startHouseProcess } from "./house-process.ts";
import { lookWhole } from "./kill-nine-run.ts";
import { type ProcessSize, processSize } from "./process-size.ts";
import { startQuickFeed } from "./quick-feed.ts";
import { seededDice } from "./seeded-dice.ts";
import { keepLoad, type LoadNotes, sleep } from "./soak-load.ts";

export interface Soak {
  readonly minutes: number;
  readonly connections: number;
  readonly thinkMs: number;
  readonly seed: number;
}

export interface SoakResult {
  readonly requests: number;
  readonly perSecond: number;
  readonly p50Ms: number;
  readonly p99Ms: number;
  readonly mostMs: number;
  readonly entries: number;
  readonly pulls: number;
  readonly plans: number;
  /** By kind of request: count, middle, 99th of a hundred, most. */
  readonly kinds: readonly { name: string; count: number; p50Ms: number; p99Ms: number; mostMs: number }[];
  readonly sizes: readonly ProcessSize[];
  readonly faults: readonly string[];
}

/** Times faster than ours that the house's clock runs: an hourly pull comes every minute, a morning every 24. */
const SPEED = 60;
const SAMPLES = 60;
/**
 * What may grow from the middle third of the run to the last. Chosen by us: a leak of a kilobyte a request is more, and
 * so is a file or socket of every pull or plan.
 */
const GROWS_AT_MOST = { residentFactor: 1.2, residentMb: 40, openFiles: 4 };

/** The real service in a process of its own under a household's load, pulling and planning; then killed, and looked at. */
export async function soak(drill: Soak): Promise<SoakResult> {
  const dataDir = mkdtempSync(join(tmpdir(), "leebench-soak-"));
  const clock = { realMs: Date.now(), simulatedMs: Date.parse("2031-05-02T03:00Z"), speed: SPEED };
  const feed = await startQuickFeed(() =>
    Math.round(clock.simulatedMs + (Date.now() - clock.realMs) * SPEED),
  );
  const notes: LoadNotes = { tookMs: new Map(), acknowledged: new Set(), faults: [], isOver: false };
  try {
    const token = await prepare(dataDir);
    const env = environment({ dataDir, feedUrl: feed.url, clock });
    const house = await startHouseProcess(env);
    await warm(house.url, token);
    const load = { url: house.url, token, dice: seededDice(drill.seed), ...drill };
    const running = keepLoad(load, notes);
    const sizes = await watched(house.child.pid!, drill.minutes);
    const gone = once(house.child, "exit");
    notes.isOver = true;
    house.child.kill("SIGKILL");
    await Promise.all([gone, running]);
    notes.faults.push(...house.said.map((text) => `the service said: ${text}`), ...grown(sizes, drill));
    lookWhole({ dataDir, acknowledged: notes.acknowledged, faults: notes.faults });
    await comesBack(env, notes);
    return await resultOf({ drill, notes, sizes, dataDir });
  } finally {
    await feed.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

async function prepare(dataDir: string): Promise<string> {
  const store = await openStore(join(dataDir, STORE_NAME));
  await fill(store);
  await store.pots.put("yard", pot({ id: "p2", name: "Fig", groupId: "aloe" }));
  const token = newSecret();
  const times = { createdUtcMs: 1, endsUtcMs: Number.MAX_SAFE_INTEGER, usedUtcMs: null };
  await store.tokens.add({ id: "soak", digest: digestOf(token), name: "soak", role: "owner", ...times });
  await store.close();
  return token;
}

function environment(of: { dataDir: string; feedUrl: string; clock: object }): Record<string, string> {
  return {
    PATH: process.env.PATH ?? "",
    TZ: "UTC",
    LEEBENCH_DATA_DIR: of.dataDir,
    LEEBENCH_PORT: "0",
    LEEBENCH_PASSPHRASE: "the fig on the stairs",
    LEEBENCH_FEED_URL: of.feedUrl,
    LEEBENCH_ENSEMBLE_URL: of.feedUrl,
    LEEBENCH_GEOCODING_URL: of.feedUrl,
    LEEBENCH_LOG_LEVEL: "error",
    LEEBENCH_DRILL_CLOCK: JSON.stringify(of.clock),
  };
}

/** Waits until there is a plan to show. */
async function warm(url: string, token: string): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    const headers = { authorization: `Bearer ${token}` };
    const answer = await fetch(new URL("api/v1/sites/yard/plan", url), { headers });
    await answer.arrayBuffer();
    if (answer.status === 200) return;
    await sleep(100);
  }
  throw new Error("no plan came");
}

async function watched(pid: number, minutes: number): Promise<ProcessSize[]> {
  const sizes: ProcessSize[] = [];
  for (let sample = 0; sample < SAMPLES; sample++) {
    await sleep((minutes * 60_000) / SAMPLES);
    const size = processSize(pid);
    if (size) sizes.push(size);
  }
  return sizes;
}

function grown(sizes: readonly ProcessSize[], { connections }: Soak): string[] {
  const third = Math.floor(sizes.length / 3);
  const middle = (from: number, of: (size: ProcessSize) => number) =>
    sizes
      .slice(from, from + third)
      .map(of)
      .sort((a, b) => a - b)[Math.floor(third / 2)] ?? 0;
  const memory = [third, 2 * third].map((from) => middle(from, ({ residentMb }) => residentMb));
  const files = [third, 2 * third].map((from) => middle(from, ({ openFiles }) => openFiles));
  const mostCallers = Math.max(0, ...sizes.map(({ callers }) => callers));
  const mostMb = memory[0]! * GROWS_AT_MOST.residentFactor + GROWS_AT_MOST.residentMb;
  return [
    ...(memory[1]! > mostMb ? [`memory grew from ${memory[0]} to ${memory[1]} MB`] : []),
    ...(files[1]! > files[0]! + GROWS_AT_MOST.openFiles
      ? [`open files grew from ${files[0]} to ${files[1]}`]
      : []),
    // One more than the load has: the driver waited for the first plan by a line of its own.
    ...(mostCallers > connections + 1
      ? [`${mostCallers} connections were held for ${connections} callers`]
      : []),
  ];
}

async function comesBack(env: Record<string, string>, { faults }: LoadNotes): Promise<void> {
  const house = await startHouseProcess(env);
  const ready = await fetch(new URL("readyz", house.url));
  if (ready.status !== 200) faults.push(`after the kill it is not ready: ${await ready.text()}`);
  const gone = once(house.child, "exit");
  house.child.kill("SIGKILL");
  await gone;
}

async function resultOf(of: {
  drill: Soak;
  notes: LoadNotes;
  sizes: readonly ProcessSize[];
  dataDir: string;
}): Promise<SoakResult> {
  const { drill, notes, sizes, dataDir } = of;
  const all = [...notes.tookMs.values()].flat();
  const store = await openStore(join(dataDir, STORE_NAME));
  const count = (query: string) => store.raw.prepare(query).pluck().get() as number;
  const counts = {
    pulls: count("SELECT count(*) FROM run WHERE job = 'pull' AND outcome = 'done'"),
    plans: count("SELECT count(*) FROM plan"),
  };
  await store.close();
  const kinds = [...notes.tookMs].map(([name, times]) => ({
    name,
    count: times.length,
    ...percentiles(times),
  }));
  return {
    requests: all.length,
    perSecond: Math.round(all.length / (drill.minutes * 60)),
    ...percentiles(all),
    entries: notes.acknowledged.size,
    ...counts,
    kinds,
    sizes,
    faults: notes.faults,
  };
}

function percentiles(times: readonly number[]): { p50Ms: number; p99Ms: number; mostMs: number } {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    Math.round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0);
  return { p50Ms: at(0.5), p99Ms: at(0.99), mostMs: at(1) };
}
