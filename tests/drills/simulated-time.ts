import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Weather } from "../../core/weather/weather.ts";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { INITIAL_FEED_STATE } from "../../service/feed/feed-state.ts";
import { noteBad, noteGood } from "../../service/feed/line-outcome.ts";
import type { WeatherAnswer, WeatherAsk } from "../../service/feed/weather-ask.ts";
import { beat } from "../../service/jobs/beat.ts";
import type { JobParts } from "../../service/jobs/job-parts.ts";
import { newTally } from "../../service/jobs/tally.ts";
import { openStore, type Store } from "../../service/store/open-store.ts";
import type { Message } from "../../service/store/outbox-store.ts";
import { houseWords } from "../../service/words/house-words.ts";
import { fixedPost } from "../service/notify/fixed-post.ts";
import { barePlan } from "../service/store/bare-plan.ts";
import { fill, site } from "../service/store/bench.ts";
import { someWeather } from "../service/store/some-weather.ts";
import { seededDice } from "./seeded-dice.ts";

export interface SimulatedTime {
  readonly fromUtcMs: number;
  readonly toUtcMs: number;
  readonly beatMs: number;
  readonly zones: readonly string[];
  readonly restarts: number;
  /** Longest time that a restart takes. */
  readonly longestDownMs: number;
  readonly feedDown: { readonly fromUtcMs: number; readonly toUtcMs: number };
  /** Share of deliveries that fail and are tried again. */
  readonly deliveryFailsFrac: number;
  readonly briefAtHour: number;
  readonly seed: number;
}

export interface Delivered {
  readonly zone: string;
  readonly messageId: string;
  readonly createdUtcMs: number;
  readonly deliveredUtcMs: number;
}

export interface SimulatedRun {
  readonly delivered: readonly Delivered[];
  readonly downs: readonly { readonly fromUtcMs: number; readonly toUtcMs: number }[];
  readonly beats: number;
  readonly pullsAsked: number;
  readonly pullsRefused: number;
  readonly brokenJobs: number;
  readonly mornings: readonly {
    readonly zone: string;
    readonly day: string;
    readonly late: boolean;
    readonly madeUtcMs: number;
    readonly weatherAgeHours: number;
  }[];
}

/**
 * Lives through a stretch of time minute by minute with the real jobs on a real store file; only the clock, the feed and
 * the channel are stand-ins, and the plan is an empty one. Each zone is a site of its own.
 */
export async function liveThrough(life: SimulatedTime): Promise<SimulatedRun> {
  const dir = mkdtempSync(join(tmpdir(), "leebench-drill-"));
  try {
    return await liveIn(join(dir, "s.db"), life);
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

async function liveIn(file: string, life: SimulatedTime): Promise<SimulatedRun> {
  const world = newWorld(life);
  const downs = restartTimes(life);
  let store = await openStore(file, { now: world.now });
  for (const zone of life.zones) await fill(store, site({ id: zone, zone }));
  let parts = jobParts(store, world);
  const waiting = [...downs];
  for (; world.now() < life.toUtcMs; world.pass(life.beatMs)) {
    await beat(parts);
    if (waiting[0] && world.now() >= waiting[0].fromUtcMs) {
      await store.close();
      world.passTo(waiting.shift()!.toUtcMs);
      store = await openStore(file, { now: world.now });
      parts = jobParts(store, world);
    }
  }
  const mornings = await morningsOf(store, life);
  await store.close();
  return { ...world.seen, mornings, downs };
}

function newWorld(life: SimulatedTime) {
  let nowUtcMs = life.fromUtcMs;
  const seen = { delivered: [] as Delivered[], beats: 0, pullsAsked: 0, pullsRefused: 0, brokenJobs: 0 };
  return {
    life,
    seen,
    dice: seededDice(life.seed + 1),
    now: () => nowUtcMs,
    pass(ms: number) {
      nowUtcMs += ms;
      seen.beats++;
    },
    passTo(utcMs: number) {
      nowUtcMs = Math.max(nowUtcMs, utcMs);
    },
  };
}

type World = ReturnType<typeof newWorld>;

function jobParts(store: Store, world: World): JobParts {
  const quiet = () => undefined;
  return {
    store,
    feed: DEFAULT_FEED_SETTINGS,
    words: houseWords({ locale: "en", units: "metric" }),
    post: fixedPost([{ name: "post", deliver: async (message) => deliver(world, message) }]),
    log: {
      debug: quiet,
      info: quiet,
      warn: quiet,
      error: (given: { event?: string }) => {
        if (given.event?.endsWith("-broke")) world.seen.brokenJobs++;
      },
    } as JobParts["log"],
    tally: newTally(),
    now: world.now,
    briefAtHour: world.life.briefAtHour,
    keep: { backupCount: 2, weatherDays: 3, planDays: 4000 },
    backupDir: null,
    fetchWeather: async (ask) => answer(world, ask),
    plan: ({ collection, weather, nowUtcMs }) => {
      const { id: siteId, zone } = collection.site;
      const plan = barePlan({ siteId, zone, nowUtcMs });
      const ageHours = (nowUtcMs - weather.origin.fetchedUtcMs) / 3_600_000;
      return { ...plan, weatherAge: { ...plan.weatherAge, ageHours } };
    },
  };
}

async function deliver(world: World, message: Message) {
  if (world.dice.share() < world.life.deliveryFailsFrac) return { ok: false, fault: "post-lost" } as const;
  world.seen.delivered.push({
    zone: message.siteId,
    messageId: message.id,
    createdUtcMs: message.createdUtcMs,
    deliveredUtcMs: world.now(),
  });
  return { ok: true } as const;
}

/** Answers as the real feed does, manners included, without a wire. */
function answer(world: World, ask: WeatherAsk): WeatherAnswer {
  const { nowUtcMs, site: at, state = INITIAL_FEED_STATE } = ask;
  const { feedDown } = world.life;
  world.seen.pullsAsked++;
  if (nowUtcMs >= feedDown.fromUtcMs && nowUtcMs < feedDown.toUtcMs) {
    world.seen.pullsRefused++;
    const problems = [{ code: "feed-refused", path: [] }];
    return {
      ok: false,
      problems,
      notes: [],
      state: noteBad(state, { line: "forecast", nowUtcMs, site: at, problems }),
    };
  }
  return {
    ok: true,
    value: shortWeather(nowUtcMs),
    notes: [],
    state: noteGood(state, { line: "forecast", nowUtcMs }),
  };
}

function shortWeather(nowUtcMs: number): Weather {
  const hourMs = 3_600_000;
  return someWeather({
    startUtcMs: Math.floor(nowUtcMs / hourMs - 6) * hourMs,
    hourCount: 12,
    fetchedUtcMs: nowUtcMs,
  });
}

/** Spread over the whole time, in order, none overlapping. */
function restartTimes(life: SimulatedTime): { fromUtcMs: number; toUtcMs: number }[] {
  const dice = seededDice(life.seed);
  const slotMs = (life.toUtcMs - life.fromUtcMs) / life.restarts;
  return Array.from({ length: life.restarts }, (_, index) => {
    const fromUtcMs = Math.round(life.fromUtcMs + (index + dice.share() * 0.9) * slotMs);
    return {
      fromUtcMs,
      toUtcMs: fromUtcMs + Math.round(dice.share() * Math.min(life.longestDownMs, slotMs * 0.1)),
    };
  });
}

async function morningsOf(store: Store, life: SimulatedTime): Promise<SimulatedRun["mornings"]> {
  const all = [];
  for (const zone of life.zones)
    for (const { kind, late, madeUtcMs, plan } of await store.plans.list(zone, Number.MAX_SAFE_INTEGER))
      if (kind === "morning")
        all.push({ zone, day: plan.forDay, late, madeUtcMs, weatherAgeHours: plan.weatherAge.ageHours });
  return all;
}
