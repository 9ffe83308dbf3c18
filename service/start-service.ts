import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Hono } from "hono";
import type { Plan } from "../core/plan/plan.ts";
import type { Outcome } from "../core/problem.ts";
import { isWithinReach, newDoor } from "./access/door.ts";
import { openBroker } from "./broker/broker-line.ts";
import type { PlanInput } from "./case/plan-input.ts";
import type { ServiceSettings } from "./config.ts";
import { fetchWeather } from "./feed/fetch-weather.ts";
import type { WeatherAnswer, WeatherAsk } from "./feed/weather-ask.ts";
import { houseApp } from "./house-app.ts";
import { startHeartbeat } from "./jobs/heartbeat.ts";
import type { JobParts } from "./jobs/job-parts.ts";
import type { PlanMade } from "./jobs/make-plan-now.ts";
import { replanNow } from "./jobs/replan-now.ts";
import { sharedRuns } from "./jobs/shared-runs.ts";
import { newTally } from "./jobs/tally.ts";
import { listen } from "./listen.ts";
import { createLog, type Log } from "./log.ts";
import type { Channel } from "./notify/channel.ts";
import { openPost } from "./notify/post.ts";
import { replayDesk } from "./replay/replay-desk.ts";
import { holdAlone } from "./store/hold-alone.ts";
import { openStore, type Store } from "./store/open-store.ts";
import { BACKUP_FOLDER_NAME, LOCK_NAME, STORE_NAME } from "./store/store-names.ts";
import { type HouseWords, houseWords } from "./words/house-words.ts";

/** For the demo and tests: another clock, another feed, another place for what is printed. */
export interface StartOptions {
  readonly now?: () => number;
  /** Runs on an invented collection; every page says so. */
  readonly demo?: boolean;
  /** False leaves the jobs to `beatNow`. */
  readonly beating?: boolean;
  readonly log?: Log;
  /** Where briefs are printed when there is no mail; standard output when left out. */
  write?(text: string): void;
  fetchWeather?(ask: WeatherAsk): Promise<WeatherAnswer>;
  plan?(input: PlanInput): Plan;
}

export interface RunningService {
  /** Where the pages are. */
  readonly url: string;
  readonly store: Store;
  readonly app: Hono;
  /** Does now whatever is due; resolves when it is done. */
  beatNow(): Promise<void>;
  replan(siteId: string): Promise<Outcome<PlanMade>>;
  /** Takes no new request, ends the work under way, closes the store. */
  close(): Promise<void>;
}

/** Opens the store, starts the jobs and listens. @throws StoreFault, or the system's error when it cannot listen */
export async function startService(
  settings: ServiceSettings,
  options: StartOptions = {},
): Promise<RunningService> {
  mkdirSync(settings.dataDir, { recursive: true, mode: 0o700 });
  const closing: (() => void | Promise<void>)[] = [holdAlone(join(settings.dataDir, LOCK_NAME))];
  let stopping = false;
  const close = async () => {
    stopping = true;
    for (let step = closing.pop(); step; step = closing.pop()) await step();
  };
  try {
    const store = await openStore(join(settings.dataDir, STORE_NAME), { now: options.now });
    closing.push(() => store.close());
    const words = houseWords((await store.choices.wordChoice()) ?? settings);
    const log = options.log ?? createLog({ level: settings.logLevel, secrets: secretsOf(settings) });
    const now = options.now ?? Date.now;
    const outgoing = { allowedHosts: settings.privateTargets };
    const broker =
      settings.broker && (await openBroker({ settings: settings.broker, store, log, now, outgoing }));
    if (broker) closing.push(() => broker.close());
    const parts = jobParts({ store, settings, options, words, log, broker: broker?.channel ?? null });
    closing.push(() => parts.post.close());
    const running = await run({ parts, settings, options, closing, isStopping: () => stopping });
    return { ...running, store, close };
  } catch (error) {
    await close();
    throw error;
  }
}

async function run(start: {
  readonly parts: JobParts;
  readonly settings: ServiceSettings;
  readonly options: StartOptions;
  readonly closing: (() => void | Promise<void>)[];
  isStopping(): boolean;
}): Promise<Pick<RunningService, "url" | "app" | "beatNow" | "replan">> {
  const { parts, settings, options, closing } = start;
  const heartbeat = startHeartbeat(parts, { beating: options.beating ?? true });
  closing.push(() => heartbeat.stop());
  const replan = sharedRuns((siteId) => replanNow(parts, siteId));
  const { store, now } = parts;
  const door = newDoor({ store, settings, now, tell: writer(options) });
  if (isWithinReach(settings)) await door.tellCode();
  const replays = replayDesk(settings);
  closing.push(() => replays.close());
  const app = houseApp({ ...start, door, replan, replays });
  const listening = await listen(app, settings);
  closing.push(() => listening.close());
  if (options.beating ?? true) void heartbeat.beatNow();
  return { url: listening.url, app, beatNow: heartbeat.beatNow, replan };
}

function jobParts({
  store,
  settings,
  options,
  words,
  log,
  broker,
}: {
  store: Store;
  settings: ServiceSettings;
  options: StartOptions;
  words: HouseWords;
  log: Log;
  broker: Channel | null;
}): JobParts {
  const write = writer(options);
  return {
    store,
    feed: settings.feed,
    words,
    post: openPost({
      ...settings,
      store,
      words,
      write,
      broker,
      outgoing: { allowedHosts: settings.privateTargets },
      now: options.now ?? Date.now,
    }),
    log,
    tally: newTally(),
    now: options.now ?? Date.now,
    briefAtHour: settings.briefAtHour,
    keep: {
      backupCount: settings.backupKeepCount,
      weatherDays: settings.weatherKeepDays,
      planDays: settings.planKeepDays,
    },
    backupDir: join(settings.dataDir, BACKUP_FOLDER_NAME),
    fetchWeather: options.fetchWeather ?? fetchWeather,
    ...(options.plan ? { plan: options.plan } : {}),
  };
}

function writer({ write }: StartOptions): (text: string) => void {
  return write ?? ((text) => void process.stdout.write(text));
}

function secretsOf({ passphrase, feed, mail, broker }: ServiceSettings): string[] {
  const addresses = [mail?.smtpUrl ?? "", broker?.url ?? ""].filter((address) => address !== "");
  const passwords = addresses.map((address) => decodeURIComponent(new URL(address).password));
  return [passphrase ?? "", feed.apiKey ?? "", ...passwords, ...addresses];
}
