import { calendarDay } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import { OWN_SITE } from "./own-year.ts";
import type { DeskAsk } from "./replay-desk.ts";
import { REPLAY_PLACES } from "./replay-places.ts";

/** The year of the days that come with the program, where the grower's own are not asked for. */
const PLACES_YEAR = 2014;

/** Where pots can be replayed; an invented house has no site that an archive knows. */
export function placesFor({ demo }: { readonly demo: boolean }): string[] {
  const places = REPLAY_PLACES.map(({ id }) => id);
  return demo ? places : [OWN_SITE, ...places];
}

export function lastYearAt({ zone }: Site, nowUtcMs: number): number {
  return Number(calendarDay(nowUtcMs, zone).slice(0, 4)) - 1;
}

/** What the desk is asked for a place: last year at the own site, the kept year elsewhere. */
export function askOf(placeId: string, { site, nowUtcMs }: { site: Site; nowUtcMs: number }): DeskAsk {
  return { placeId, year: placeId === OWN_SITE ? lastYearAt(site, nowUtcMs) : PLACES_YEAR };
}
