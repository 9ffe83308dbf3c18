import type { JournalEntry } from "../journal/entry.ts";
import type { PotNow } from "../pot/pot-now.ts";
import { instantOf } from "../site/instant.ts";
import { calendarDay } from "../site/local-days.ts";
import { dayOutlines } from "../weather/day-outline.ts";
import { dryWindows } from "../weather/dry-windows.ts";
import { HOUR_MS, type Weather } from "../weather/weather.ts";
import { changesSince } from "./changes-since.ts";
import type { Collection } from "./collection.ts";
import type { Plan, PotPlan } from "./plan.ts";
import { cautionsOf } from "./rows/cautions.ts";
import { potRow } from "./rows/pot-row.ts";
import { spotRows } from "./rows/spot-rows.ts";
import { weatherAge } from "./rows/weather-age.ts";
import type { Settings } from "./settings.ts";
import { lineOf, type Weighed, weigh } from "./weigh.ts";

export interface PlanInput {
  readonly collection: Collection;
  readonly journal: readonly JournalEntry[];
  readonly weather: Weather;
  readonly nowUtcMs: number;
  readonly settings: Settings;
  readonly previous?: Plan;
  /** The pots as they stand now, where somebody has kept them on; else the journal is replayed. */
  readonly pots?: readonly PotNow[];
}

/**
 * The plan for a collection: for every pot the cheapest thing to do, harm and trouble taken together. Pure: the same
 * inputs and seed give the same plan, whatever the order of pots, spots and journal.
 */
export function plan(input: PlanInput): Plan {
  return planFrom(weigh(input), input);
}

/** The plan from what was weighed for the same input. */
export function planFrom(weighed: Weighed, input: PlanInput): Plan {
  const { context, studies, places, entries } = weighed;
  const { collection, nowUtcMs, weather } = input;
  const forDay = calendarDay(nowUtcMs, collection.site.zone);
  const spots = new Map(collection.spots.map((spot) => [spot.id, spot]));
  const rows = studies.map((study) => potRow(context, lineOf(weighed, study)));
  rows.sort((a, b) => walkOf(a, spots) - walkOf(b, spots) || (a.potId < b.potId ? -1 : 1));
  return {
    version: 1,
    siteId: collection.site.id,
    zone: collection.site.zone,
    issuedAt: instantOf(nowUtcMs),
    forDay,
    horizon: {
      from: instantOf(context.startUtcMs),
      to: instantOf(context.startUtcMs + context.hourCount * HOUR_MS),
    },
    weatherAge: weatherAge({ ready: context.ready, weather, nowUtcMs }),
    pots: rows,
    spots: spotRows(context, studies),
    days: dayOutlines(context.ready, collection.site),
    workWindows: dryWindows({ ready: context.ready, site: collection.site, settings: input.settings }),
    cautions: cautionsOf(context, { studies, rows, places }),
    changesSince:
      input.previous === undefined ? [] : changesSince(input.previous, { rows, journal: entries, forDay }),
  };
}

function walkOf({ spotId }: PotPlan, spots: ReadonlyMap<string, { walkOrder: number }>): number {
  return spots.get(spotId)?.walkOrder ?? Number.POSITIVE_INFINITY;
}
