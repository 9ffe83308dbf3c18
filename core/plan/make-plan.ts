import type { JournalEntry } from "../journal/entry.ts";
import type { PotNow } from "../pot/pot-now.ts";
import { instantOf } from "../site/instant.ts";
import { calendarDay } from "../site/local-days.ts";
import { dayOutlines } from "../weather/day-outline.ts";
import { HOUR_MS, type Weather } from "../weather/weather.ts";
import { changesSince } from "./changes-since.ts";
import type { Collection } from "./collection.ts";
import { spellsAhead } from "./days/spells-ahead.ts";
import { workWindows } from "./days/work-windows.ts";
import type { Plan } from "./plan.ts";
import type { PotPlan } from "./pot-plan.ts";
import { cautionsOf } from "./rows/cautions.ts";
import { potRow } from "./rows/pot-row.ts";
import { spotRows } from "./rows/spot-rows.ts";
import { weatherAge } from "./rows/weather-age.ts";
import { type Calibration, calibration } from "./score/calibration.ts";
import type { ToldPlan } from "./score/told-plan.ts";
import { rainByDay } from "./score/told-rain.ts";
import type { Settings } from "./settings.ts";
import { lineOf, type Weighed, weigh } from "./weigh.ts";

export interface PlanInput {
  readonly collection: Collection;
  readonly journal: readonly JournalEntry[];
  readonly weather: Weather;
  readonly nowUtcMs: number;
  readonly settings: Settings;
  readonly previous?: Plan;
  /** Past plans to be scored against what came; without them the score of the previous plan of the same day stands. */
  readonly told?: readonly ToldPlan[];
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
  const spells = spellsAhead(context, studies);
  const kept = keptOfPlans(input, weighed);
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
    ...(spells.length > 0 ? { spells } : {}),
    workWindows: workWindows({ ready: context.ready, collection, settings: input.settings, nowUtcMs }),
    cautions: cautionsOf(context, { studies, rows, places }),
    changesSince:
      input.previous === undefined ? [] : changesSince(input.previous, { rows, journal: entries, forDay }),
    ...(kept === null ? {} : { kept }),
  };
}

/** The score of past plans; null where there is nothing to score. */
function keptOfPlans(
  { told, previous, collection, nowUtcMs }: PlanInput,
  { context, entries }: Weighed,
): Calibration | null {
  const { zone } = collection.site;
  if (told === undefined) {
    const isSameDay = previous?.forDay === calendarDay(nowUtcMs, zone);
    return (isSameDay && previous.kept) || null;
  }
  const past = context.ready.past;
  const rainMmOn = rainByDay({ ...past, hours: past }, zone);
  const kept = calibration({ plans: told, rainMmOn, journal: entries });
  return kept.rain.count + kept.dry.count > 0 ? kept : null;
}

function walkOf({ spotId }: PotPlan, spots: ReadonlyMap<string, { walkOrder: number }>): number {
  return spots.get(spotId)?.walkOrder ?? Number.POSITIVE_INFINITY;
}
