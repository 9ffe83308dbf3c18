import { calendarDay, utcMsOfLocal } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";

/** What is known of one site's jobs, as stored. */
export interface SiteRuns {
  readonly siteId: string;
  readonly zone: string;
  /** A house in which nothing stands yet has no morning: there is nothing to tell. */
  readonly hasPots: boolean;
  /** Local days of late that have their morning. */
  readonly morningDays: readonly string[];
  /** Tries at a morning that failed, newest first. */
  readonly failedMornings: readonly { readonly slot: string; readonly startedUtcMs: number }[];
  /** When the feed's manners want the next pull. */
  readonly pullDueUtcMs: number;
}

export interface ServiceRuns {
  /** Nights of late, newest first; the local day is in the zone of the first site. */
  readonly nights: readonly {
    readonly slot: string;
    readonly outcome: "done" | "failed";
    readonly startedUtcMs: number;
  }[];
}

export interface Due {
  readonly job: "pull" | "morning" | "nightly";
  readonly siteId: string | null;
  /** The local day that a morning or a night's work is for; empty for a pull. */
  readonly slot: string;
  /** Its hour passed while nothing was running. */
  readonly late: boolean;
}

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
/** A heartbeat may lag by some minutes; only more than this is worth a word. Chosen by us. */
const LATE_AFTER_MS = 15 * MINUTE_MS;
/** When the night's work is done: after midnight everywhere, before any brief. Chosen by us. */
const NIGHTLY_AT_HOUR = 2.5;
const LONGEST_RETRY_MS = 15 * MINUTE_MS;
/** A night that failed, on a full disk say, is tried again this much later. Chosen by us. */
export const NIGHTLY_RETRY_MS = 60 * MINUTE_MS;

/**
 * What is due now, most pressing first. A morning is due once its local hour has come on a day that has none yet, so
 * clocks that change, stand still or are set back can neither double nor lose one; a day that is wholly over is not
 * made up for.
 */
export function dueNow(input: {
  readonly nowUtcMs: number;
  readonly sites: readonly SiteRuns[];
  readonly service: ServiceRuns;
  readonly briefAtHour: number;
}): Due[] {
  const { nowUtcMs, sites, service, briefAtHour } = input;
  const mornings = sites.flatMap((site) => morningDue({ nowUtcMs, site, briefAtHour }) ?? []);
  const pulls = sites
    .filter((site) => isPullDue(site, nowUtcMs))
    .map(({ siteId }): Due => ({ job: "pull", siteId, slot: "", late: false }));
  const [first] = sites;
  return [...mornings, ...pulls, ...(first ? nightlyDue({ nowUtcMs, zone: first.zone, service }) : [])];
}

function morningDue(input: {
  readonly nowUtcMs: number;
  readonly site: SiteRuns;
  readonly briefAtHour: number;
}): Due | null {
  const { nowUtcMs, site, briefAtHour } = input;
  const day = calendarDay(nowUtcMs, site.zone);
  const dueUtcMs = utcMsOfLocal(day, briefAtHour, site.zone);
  if (!site.hasPots || nowUtcMs < dueUtcMs) return null;
  if (site.morningDays.includes(day) || isResting(site, { day, nowUtcMs })) return null;
  return { job: "morning", siteId: site.siteId, slot: day, late: nowUtcMs - dueUtcMs > LATE_AFTER_MS };
}

/** After failures a morning is tried again in 1, 2, 4 ... 15 minutes. A try in the future means a clock put back. */
function isResting(site: SiteRuns, { day, nowUtcMs }: { day: CalendarDay; nowUtcMs: number }): boolean {
  const failed = site.failedMornings.filter(({ slot }) => slot === day);
  const last = failed[0];
  if (!last || last.startedUtcMs > nowUtcMs) return false;
  const waitMs = Math.min(MINUTE_MS * 2 ** (failed.length - 1), LONGEST_RETRY_MS);
  // Half a minute of grace: heartbeats do not come to the millisecond.
  return nowUtcMs - last.startedUtcMs < waitMs - MINUTE_MS / 2;
}

/** A date more than a day ahead was written before a clock was put back: it is not waited for. */
function isPullDue({ pullDueUtcMs }: SiteRuns, nowUtcMs: number): boolean {
  return nowUtcMs >= pullDueUtcMs || pullDueUtcMs - nowUtcMs > DAY_MS;
}

function nightlyDue(input: {
  readonly nowUtcMs: number;
  readonly zone: string;
  readonly service: ServiceRuns;
}): Due[] {
  const { nowUtcMs, zone, service } = input;
  const slot = calendarDay(nowUtcMs, zone);
  const dueUtcMs = utcMsOfLocal(slot, NIGHTLY_AT_HOUR, zone);
  const tonight = service.nights.filter((night) => night.slot === slot);
  const isDone = tonight.some(({ outcome }) => outcome === "done");
  const isResting = tonight.some(({ startedUtcMs }) => Math.abs(nowUtcMs - startedUtcMs) < NIGHTLY_RETRY_MS);
  if (nowUtcMs < dueUtcMs || isDone || isResting) return [];
  return [{ job: "nightly", siteId: null, slot, late: nowUtcMs - dueUtcMs > LATE_AFTER_MS }];
}
