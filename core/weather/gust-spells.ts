import { type HourRun, runsOf } from "./spells.ts";

/** Hours with gusts at or above a limit. */
export interface GustSpell extends HourRun {
  readonly strongestMPerS: number;
}

/** Gusts come and go; a lull of this length is still the same blow. Chosen by us. */
const MOST_BREAK_HOURS = 3;

/** Spells of gusts ahead; works on a site's gusts and on a spot's alike. */
export function gustSpells(gustMPerS: Float64Array, fromMPerS: number): GustSpell[] {
  const holds = (hour: number) => gustMPerS[hour]! >= fromMPerS;
  return runsOf(gustMPerS.length, { holds, mostBreakHours: MOST_BREAK_HOURS }).map((run) => ({
    ...run,
    strongestMPerS: gustMPerS.subarray(run.fromHour, run.toHour).reduce((a, b) => Math.max(a, b)),
  }));
}
