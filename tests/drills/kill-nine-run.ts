import { randomUUID } from "node:crypto";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { openStore } from "../../service/store/open-store.ts";
import { STORE_NAME } from "../../service/store/store-names.ts";
import { fill, pot } from "../service/store/bench.ts";
import { type HouseProcess, startHouseProcess } from "./house-process.ts";
import { type LivedClock, livedClock } from "./lived-clock.ts";
import { openPostBox } from "./post-box.ts";
import { startQuickFeed } from "./quick-feed.ts";
import { type Dice, seededDice } from "./seeded-dice.ts";
import { tickForm } from "./tick-form.ts";

export interface KillNine {
  readonly kills: number;
  /** How many times faster than ours the house's clock runs. */
  readonly speed: number;
  readonly seed: number;
}

export interface KillNineResult {
  readonly kills: number;
  readonly simulatedDays: number;
  readonly entriesAcknowledged: number;
  readonly entriesSentAgain: number;
  readonly mornings: number;
  /** Days on which a beat that began after noon came to its end before the next kill: by then the morning must be there. */
  readonly daysWithTimeForOne: number;
  readonly messagesTaken: number;
  /** Taken twice by the mail server because the kill fell between its answer and our note; the Message-ID is the same. */
  readonly repeatedUnderOneId: number;
  readonly backups: number;
  readonly faults: readonly string[];
}

const HOUR_MS = 3_600_000;
const WRITERS = 3;
/** Longest life where the house starts within the same time; a life has to be able to hold a morning's work. */
const LIFE_MS = 3000;
/** The house lies dead for up to so long between two lives, by its own clock. */
const MOST_DOWN_MS = HOUR_MS;

/** Kills the real service again and again in the middle of whatever it does, and looks after each kill whether all is there. */
export async function killNine(drill: KillNine): Promise<KillNineResult> {
  const dataDir = mkdtempSync(join(tmpdir(), "leebench-kill-"));
  const startUtcMs = Date.parse("2031-05-02T03:00Z");
  const clock = livedClock({ startUtcMs, speed: drill.speed });
  const [feed, box] = [await startQuickFeed(clock.nowUtcMs), await openPostBox()];
  try {
    await prepare(dataDir);
    const scene: Scene = {
      dataDir,
      env: environment({ dataDir, feedUrl: feed.url, smtpUrl: box.url }),
      clock,
      slowTimes: 1,
      dice: seededDice(drill.seed),
      acknowledged: new Set(),
      unsure: new Set(),
      sentAgain: { count: 0 },
      faults: [],
      beatsUtcMs: [],
    };
    for (let kill = 0; kill < drill.kills; kill++) await liveAndDie(scene);
    await liveQuietly(scene);
    return summary({
      scene,
      drill,
      taken: box.taken,
      days: (clock.nowUtcMs() - startUtcMs) / (24 * HOUR_MS),
    });
  } finally {
    await feed.close();
    await box.close();
    rmSync(dataDir, { recursive: true, force: true });
  }
}

interface Scene {
  readonly dataDir: string;
  readonly env: Record<string, string>;
  readonly clock: LivedClock;
  /** How many times longer than a life the last start took, 1 at least: on a slow machine lives are longer and clocks slower. */
  slowTimes: number;
  readonly dice: Dice;
  readonly acknowledged: Set<string>;
  /** Sent, but the answer never came: to be sent again under the same id. */
  readonly unsure: Set<string>;
  readonly sentAgain: { count: number };
  readonly faults: string[];
  /** Beats that came to their end, by when each began. */
  readonly beatsUtcMs: number[];
}

async function prepare(dataDir: string): Promise<void> {
  const store = await openStore(join(dataDir, STORE_NAME));
  await fill(store);
  await store.pots.put("yard", pot({ id: "p2", name: "Fig", groupId: "aloe" }));
  await store.close();
}

function environment(of: { dataDir: string; feedUrl: string; smtpUrl: string }): Record<string, string> {
  return {
    PATH: process.env.PATH ?? "",
    TZ: "UTC",
    LEEBENCH_DATA_DIR: of.dataDir,
    LEEBENCH_PORT: "0",
    LEEBENCH_FEED_URL: of.feedUrl,
    LEEBENCH_ENSEMBLE_URL: of.feedUrl,
    LEEBENCH_GEOCODING_URL: of.feedUrl,
    LEEBENCH_SMTP_URL: of.smtpUrl,
    LEEBENCH_MAIL_FROM: "bench@host.example",
    LEEBENCH_MAIL_TO: "me@host.example",
    LEEBENCH_LOG_LEVEL: "error",
    LEEBENCH_BACKUP_KEEP: "2",
  };
}

async function startHouse(scene: Scene): Promise<HouseProcess> {
  const startMs = Date.now();
  const clock = scene.clock.forNextLife(scene.slowTimes);
  const house = await startHouseProcess({ ...scene.env, LEEBENCH_DRILL_CLOCK: clock });
  scene.slowTimes = Math.max(1, (Date.now() - startMs) / LIFE_MS);
  scene.clock.lives(house.clockStartMs);
  house.child.stderr?.on("data", (chunk: Buffer) =>
    scene.faults.push(`the service said: ${String(chunk).slice(0, 300)}`),
  );
  return house;
}

async function liveAndDie(scene: Scene): Promise<void> {
  const { slowTimes } = scene;
  const { child, url, beatsUtcMs } = await startHouse(scene);
  const life = { isOver: false };
  const writers = Array.from({ length: WRITERS }, () => keepWriting(scene, { url, life }));
  await sleep(scene.dice.whole(20, LIFE_MS) * slowTimes);
  const gone = once(child, "exit");
  child.kill("SIGKILL");
  await gone;
  scene.clock.stops(scene.dice.whole(0, MOST_DOWN_MS));
  life.isOver = true;
  scene.beatsUtcMs.push(...beatsUtcMs);
  await Promise.all(writers);
  lookWhole(scene);
}

/** A last life without a kill, in which everything outstanding gets done. */
async function liveQuietly(scene: Scene): Promise<void> {
  const { child, url } = await startHouse(scene);
  for (const id of [...scene.unsure]) await write(scene, { url, id });
  for (let tries = 0; tries < 100 && hasWaiting(scene); tries++) await sleep(100);
  const gone = once(child, "exit");
  child.kill("SIGKILL");
  await gone;
  lookWhole(scene);
}

function hasWaiting({ dataDir }: Scene): boolean {
  const raw = new Database(join(dataDir, STORE_NAME), { readonly: true });
  const waiting = raw.prepare("SELECT count(*) FROM outbox WHERE state = 'waiting'").pluck().get() as number;
  raw.close();
  return waiting > 0;
}

async function keepWriting(
  scene: Scene,
  { url, life }: { url: string; life: { isOver: boolean } },
): Promise<void> {
  while (!life.isOver) {
    const [again] = scene.unsure;
    if (again) {
      scene.unsure.delete(again);
      scene.sentAgain.count++;
    }
    await write(scene, { url, id: again ?? randomUUID() });
  }
}

/** As the page's own form sends it. An entry counts as acknowledged when the answer has come. */
async function write(scene: Scene, { url, id }: { url: string; id: string }): Promise<void> {
  const potId = scene.dice.share() < 0.5 ? "p1" : "p2";
  try {
    const answer = await fetch(new URL("done", url), {
      method: "POST",
      body: tickForm({ entryId: id, potId }),
      redirect: "manual",
    });
    if (answer.status !== 303) throw new Error(`answered ${answer.status}`);
    scene.acknowledged.add(id);
    scene.unsure.delete(id);
  } catch {
    scene.unsure.add(id);
    await sleep(10);
  }
}

/** Whether the store is sound and holds everything that was acknowledged. */
export function lookWhole({
  dataDir,
  acknowledged,
  faults,
}: Pick<Scene, "dataDir" | "acknowledged"> & { faults: string[] }): void {
  const raw = new Database(join(dataDir, STORE_NAME));
  try {
    const check = raw.pragma("integrity_check", { simple: true });
    if (check !== "ok") faults.push(`the database is not whole: ${check}`);
    if ((raw.pragma("foreign_key_check") as unknown[]).length > 0) faults.push("a reference leads nowhere");
    const kept = raw.prepare("SELECT id FROM journal").pluck().all() as string[];
    const known = new Set(kept);
    if (known.size !== kept.length) faults.push("an entry is there twice");
    for (const id of acknowledged)
      if (!known.has(id)) faults.push(`entry ${id} was acknowledged and is not there`);
  } finally {
    raw.close();
  }
}

async function summary(input: {
  scene: Scene;
  drill: KillNine;
  taken: readonly string[];
  days: number;
}): Promise<KillNineResult> {
  const { scene, drill, taken, days } = input;
  const { mornings, messages, backups } = await keptAtTheEnd(scene);
  const faults = [...scene.faults];
  const distinct = new Set(taken);
  for (const { id, state, forDay } of messages)
    if (state === "sent" && !distinct.has(`${id}@leebench.invalid`))
      faults.push(`the brief of ${forDay} is noted as sent and never came`);
  const sent = messages.filter(({ state }) => state === "sent").map(({ id }) => `${id}@leebench.invalid`);
  for (const id of distinct) if (!sent.includes(id)) faults.push(`${id} came but is not noted as sent`);
  const withMessage = new Set(messages.filter(({ kind }) => kind === "morning").map(({ forDay }) => forDay));
  for (const day of mornings) if (!withMessage.has(day)) faults.push(`${day} has a plan without its message`);
  const owed = new Set(scene.beatsUtcMs.filter(isAfternoon).map(dayOf));
  if (owed.size === 0 && drill.kills >= 100) faults.push("no day had time for a morning: nothing is shown");
  for (const day of owed) if (!mornings.includes(day)) faults.push(`${day} has no morning`);
  for (const { state, forDay } of messages)
    if (state !== "sent") faults.push(`the brief of ${forDay} is ${state}`);
  return {
    kills: drill.kills,
    simulatedDays: Math.round(days),
    entriesAcknowledged: scene.acknowledged.size,
    entriesSentAgain: scene.sentAgain.count,
    mornings: mornings.length,
    daysWithTimeForOne: owed.size,
    messagesTaken: taken.length,
    repeatedUnderOneId: taken.length - distinct.size,
    backups,
    faults,
  };
}

async function keptAtTheEnd({ dataDir }: Scene) {
  const store = await openStore(join(dataDir, STORE_NAME));
  const mornings = (await store.plans.morningDays("yard")).sort();
  const messages = store.raw
    .prepare(
      "SELECT o.id, o.state, p.for_day AS forDay, p.kind FROM outbox o JOIN plan p ON p.id = o.plan_id",
    )
    .all() as { id: string; state: string; forDay: string; kind: string }[];
  const nights = await store.runs.latest("nightly", undefined, 10_000);
  await store.close();
  return { mornings, messages, backups: nights.filter(({ outcome }) => outcome === "done").length };
}

function isAfternoon(utcMs: number): boolean {
  return new Date(utcMs).getUTCHours() >= 12;
}

function dayOf(utcMs: number): string {
  return new Date(utcMs).toISOString().slice(0, 10);
}

function sleep(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
