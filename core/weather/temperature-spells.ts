import { type HourRun, runsOf } from "./spells.ts";
import { type Spread, spreadOf } from "./spread.ts";

/** Hours on the wrong side of a limit. */
export interface TemperatureSpell extends HourRun {
  /** Coldest or warmest hour of each member. */
  readonly extremeC: Spread;
  /** Share of members that pass the limit in it. */
  readonly shareFrac: number;
}

interface Temperatures {
  readonly hourCount: number;
  readonly memberCount: number;
  readonly tempC: Float64Array;
}

/** Share of members from which an hour belongs to a spell. Chosen by us: one member in ten is worth a thought. */
const LEAST_SHARE_FRAC = 0.1;
/** A warm noon does not end a cold spell of two nights, nor a cool night a hot one. Chosen by us. */
const MOST_BREAK_HOURS = 18;

/** Spells in which it may be colder than a limit; works on a site's air and on a spot's leaf temperature alike. */
export function coldSpells(hours: Temperatures, belowC: number): TemperatureSpell[] {
  return spellsBeyond(hours, { passes: (tempC) => tempC < belowC, pick: Math.min });
}

/** Spells in which it may be hotter than a limit. */
export function hotSpells(hours: Temperatures, aboveC: number): TemperatureSpell[] {
  return spellsBeyond(hours, { passes: (tempC) => tempC > aboveC, pick: Math.max });
}

function spellsBeyond(
  hours: Temperatures,
  side: { passes: (tempC: number) => boolean; pick: (a: number, b: number) => number },
): TemperatureSpell[] {
  const { hourCount, memberCount, tempC } = hours;
  const extremes = (run: HourRun): Float64Array => {
    const found = tempC.slice(run.fromHour * memberCount, (run.fromHour + 1) * memberCount);
    for (let i = run.fromHour * memberCount; i < run.toHour * memberCount; i++) {
      found[i % memberCount] = side.pick(found[i % memberCount]!, tempC[i]!);
    }
    return found;
  };
  const shareFrac = (values: Float64Array) => values.filter(side.passes).length / memberCount;
  const holds = (hour: number) =>
    shareFrac(tempC.subarray(hour * memberCount, (hour + 1) * memberCount)) >= LEAST_SHARE_FRAC;
  return runsOf(hourCount, { holds, mostBreakHours: MOST_BREAK_HOURS }).map((run) => {
    const found = extremes(run);
    return { ...run, extremeC: spreadOf(found), shareFrac: shareFrac(found) };
  });
}
