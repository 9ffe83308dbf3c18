import { calendarDay, utcMsOfLocal } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import type { Weather } from "../../core/weather/weather.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { pullDueUtcMs } from "../feed/pull-due.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Run } from "../store/runs-store.ts";

/** How the house is doing for one site: instants and codes, no sentence. */
export interface HouseStatus {
  readonly weather: {
    /** Null before the first good pull. */
    readonly origin: Weather["origin"] | null;
    readonly failuresInRow: number;
    readonly failingSinceUtcMs: number | null;
    readonly nextPullUtcMs: number;
    /** Codes of the last pull, when it failed. */
    readonly fault: string | null;
  };
  readonly morning: {
    readonly lastDay: string | null;
    readonly lastMadeUtcMs: number | null;
    readonly wasLate: boolean;
    readonly nextUtcMs: number;
    /** Why today's could not be made yet. */
    readonly fault: string | null;
  };
  /** Newest first. */
  readonly messages: readonly Message[];
  readonly backup: { readonly lastUtcMs: number | null; readonly fault: string | null };
}

const MESSAGES_SHOWN = 10;
const DAY_MS = 86_400_000;

export async function houseStatus(input: {
  readonly store: Store;
  readonly site: Site;
  readonly nowUtcMs: number;
  readonly briefAtHour: number;
}): Promise<HouseStatus> {
  const { store, site } = input;
  const nights = await store.runs.latest("nightly");
  return {
    weather: await weatherStatus(store, site),
    morning: await morningStatus(input),
    messages: await store.outbox.list(site.id, MESSAGES_SHOWN),
    backup: {
      lastUtcMs: nights.find(({ outcome }) => outcome === "done")?.startedUtcMs ?? null,
      fault: faultOf(nights[0]),
    },
  };
}

async function weatherStatus(store: Store, site: Site): Promise<HouseStatus["weather"]> {
  const state = readFeedState(await store.feedState.get(site.id));
  const [last] = await store.runs.latest("pull", site.id, 1);
  return {
    origin: await store.weather.latestOrigin(site.id),
    failuresInRow: state.forecast.failuresInRow,
    failingSinceUtcMs: state.forecast.failingSinceUtcMs,
    nextPullUtcMs: pullDueUtcMs(state, site),
    fault: faultOf(last),
  };
}

async function morningStatus({
  store,
  site,
  nowUtcMs,
  briefAtHour,
}: Parameters<typeof houseStatus>[0]): Promise<HouseStatus["morning"]> {
  const last = await store.plans.latestStored(site.id, ["morning"]);
  const [tried] = await store.runs.latest("morning", site.id, 1);
  const today = calendarDay(nowUtcMs, site.zone);
  const isMade = last?.plan.forDay === today;
  const nextDay = isMade ? calendarDay(nowUtcMs + DAY_MS, site.zone) : today;
  return {
    lastDay: last?.plan.forDay ?? null,
    lastMadeUtcMs: last?.madeUtcMs ?? null,
    wasLate: last?.late ?? false,
    nextUtcMs: Math.max(nowUtcMs, utcMsOfLocal(nextDay, briefAtHour, site.zone)),
    fault: isMade ? null : faultOf(tried),
  };
}

function faultOf(run: Run | undefined): string | null {
  return run?.outcome === "failed" ? run.detail : null;
}
