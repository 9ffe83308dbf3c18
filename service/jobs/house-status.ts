import { calendarDay, utcMsOfLocal } from "../../core/site/local-days.ts";
import type { CalendarDay, Site } from "../../core/site/site.ts";
import type { Weather } from "../../core/weather/weather.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { pullDueUtcMs } from "../feed/pull-due.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Run } from "../store/runs-store.ts";
import { briefTiming } from "./brief-timing.ts";
import { type Fault, faultsInNote } from "./fault-note.ts";

/** How the house is doing for one site: instants and codes, no sentence. */
export interface HouseStatus {
  readonly weather: {
    /** Null before the first good pull. */
    readonly origin: Weather["origin"] | null;
    readonly failuresInRow: number;
    readonly failingSinceUtcMs: number | null;
    /** Since when the ensemble has not answered. */
    readonly spreadFailingSinceUtcMs: number | null;
    readonly nextPullUtcMs: number;
    /** What went amiss in the last pull; notes where it brought weather all the same. */
    readonly faults: readonly Fault[];
  };
  readonly morning: {
    readonly lastDay: CalendarDay | null;
    readonly lastMadeUtcMs: number | null;
    readonly wasLate: boolean;
    /** The hour at which it should have been made. */
    readonly dueUtcMs: number;
    /** Days just before the last one that had none. */
    readonly missedDays: readonly CalendarDay[];
    /** No brief is made as long as no pot is entered. */
    readonly hasPots: boolean;
    /** Today's hour has come and its plan is not there. */
    readonly isOverdue: boolean;
    readonly nextUtcMs: number;
    /** Why today's could not be made yet. */
    readonly faults: readonly Fault[];
  };
  /** Newest first. */
  readonly messages: readonly Message[];
  readonly backup: { readonly lastUtcMs: number | null; readonly faults: readonly Fault[] };
}

interface StatusInput {
  readonly store: Store;
  readonly site: Site;
  readonly nowUtcMs: number;
  readonly briefAtHour: number;
}

const MESSAGES_SHOWN = 10;
const DAY_MS = 86_400_000;

export async function houseStatus(input: StatusInput): Promise<HouseStatus> {
  const { store, site } = input;
  const nights = await store.runs.latest("nightly");
  return {
    weather: await weatherStatus(store, site),
    morning: await morningStatus(input),
    messages: await store.outbox.list(site.id, MESSAGES_SHOWN),
    backup: {
      lastUtcMs: nights.find(({ outcome }) => outcome === "done")?.startedUtcMs ?? null,
      faults: faultsOf(nights[0]),
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
    spreadFailingSinceUtcMs: state.ensemble.failingSinceUtcMs,
    nextPullUtcMs: pullDueUtcMs(state, site),
    faults: last ? faultsInNote(last.detail) : [],
  };
}

async function morningStatus(input: StatusInput): Promise<HouseStatus["morning"]> {
  const { store, site, nowUtcMs, briefAtHour } = input;
  const last = await store.plans.latestStored(site.id, ["morning"]);
  const [tried] = await store.runs.latest("morning", site.id, 1);
  const today = calendarDay(nowUtcMs, site.zone);
  const isMade = last?.plan.forDay === today;
  const dueUtcMs = (day: CalendarDay) => utcMsOfLocal(day, briefAtHour, site.zone);
  const timing = briefTiming({
    forDay: last?.plan.forDay ?? today,
    lateUtcMs: last?.late ? last.madeUtcMs : null,
    dueUtcMs: dueUtcMs(last?.plan.forDay ?? today),
    morningDays: await store.plans.morningDays(site.id),
  });
  const hasPots = !(await store.pots.isEmpty(site.id));
  return {
    hasPots,
    lastDay: last?.plan.forDay ?? null,
    lastMadeUtcMs: last?.madeUtcMs ?? null,
    dueUtcMs: timing.dueUtcMs,
    wasLate: timing.lateUtcMs !== null,
    missedDays: timing.missedDays,
    isOverdue: hasPots && !isMade && nowUtcMs >= dueUtcMs(today),
    nextUtcMs: Math.max(nowUtcMs, dueUtcMs(isMade ? calendarDay(nowUtcMs + DAY_MS, site.zone) : today)),
    faults: isMade ? [] : faultsOf(tried),
  };
}

function faultsOf(run: Run | undefined): Fault[] {
  return run?.outcome === "failed" ? faultsInNote(run.detail) : [];
}
