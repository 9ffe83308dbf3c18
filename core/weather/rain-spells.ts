import type { HoursReady } from "./hours-ready.ts";
import { type HourRun, runsOf } from "./spells.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** One spell of likely rain. */
export interface RainSpell extends HourRun {
  readonly rainMm: Spread;
  /** Highest hour of each member. */
  readonly peakMmPerH: Spread;
  /** Share of members with a wet hour in it. */
  readonly shareFrac: number;
}

/** An hour is wet from here, mm. Common practice of gauges and forecasts. */
const WET_HOUR_MM = 0.2;
/** Share of members from which an hour belongs to a spell. Chosen by us: rarer rain is told by the day's chance. */
const LEAST_SHARE_FRAC = 0.25;
const MOST_BREAK_HOURS = 2;

/** Spells of rain ahead: when, how much, how hard, how likely. */
export function rainSpells(hours: HoursReady): RainSpell[] {
  const holds = (hour: number) =>
    wetShareFrac(hours, { fromHour: hour, toHour: hour + 1 }) >= LEAST_SHARE_FRAC;
  return runsOf(hours.hourCount, { holds, mostBreakHours: MOST_BREAK_HOURS }).map((run) => ({
    ...run,
    rainMm: spreadOf(byMember(hours, run, (total, rain) => total + rain)),
    peakMmPerH: spreadOf(byMember(hours, run, Math.max)),
    shareFrac: wetShareFrac(hours, run),
  }));
}

function wetShareFrac(hours: HoursReady, run: HourRun): number {
  const wettest = byMember(hours, run, Math.max);
  return wettest.filter((mm) => mm >= WET_HOUR_MM).length / hours.memberCount;
}

function byMember(
  hours: HoursReady,
  run: HourRun,
  fold: (total: number, rain: number) => number,
): Float64Array {
  const totals = new Float64Array(hours.memberCount);
  for (let hour = run.fromHour; hour < run.toHour; hour++) {
    for (let m = 0; m < hours.memberCount; m++) {
      totals[m] = fold(totals[m]!, hours.rainMm[hour * hours.memberCount + m]!);
    }
  }
  return totals;
}
