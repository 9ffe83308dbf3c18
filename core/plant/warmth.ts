/**
 * What the last days were like for a plant, complete in itself, so that a replay can be cut anywhere. Days are UTC
 * days: the coldest hour of any night falls in one of them.
 */
export interface Warmth {
  /** Minima of the last three whole days, oldest first; NaN where not known. */
  readonly nightsC: readonly [number, number, number];
  /** Mean of the last ten days or so (each new day counts a tenth); NaN before the first whole day. */
  readonly meanC: number;
  /** The day being counted. */
  readonly day: number;
  readonly dayMinC: number;
  readonly daySumC: number;
  readonly dayHours: number;
}

const NEW_DAY_WEIGHT = 0.1;
const DAY_MS = 86_400_000;

export const NO_WARMTH: Warmth = {
  nightsC: [Number.NaN, Number.NaN, Number.NaN],
  meanC: Number.NaN,
  day: Number.NaN,
  dayMinC: Number.POSITIVE_INFINITY,
  daySumC: 0,
  dayHours: 0,
};

/** Further by some hours of one UTC day, the first of which begins at `startUtcMs`. */
export function warmthAfter(before: Warmth, hours: { startUtcMs: number; tempC: Float64Array }): Warmth {
  const day = Math.floor(hours.startUtcMs / DAY_MS);
  const from = day === before.day ? before : { ...dayClosed(before), day };
  let { dayMinC, daySumC } = from;
  for (const tempC of hours.tempC) {
    if (tempC < dayMinC) dayMinC = tempC;
    daySumC += tempC;
  }
  return { ...from, dayMinC, daySumC, dayHours: from.dayHours + hours.tempC.length };
}

/** Mean of the last three night minima, of those that are known; NaN when none is. */
export function threeNightC({ nightsC }: Warmth): number {
  let sumC = 0;
  let known = 0;
  for (const nightC of nightsC) {
    if (Number.isNaN(nightC)) continue;
    sumC += nightC;
    known++;
  }
  return known === 0 ? Number.NaN : sumC / known;
}

function dayClosed(warmth: Warmth): Warmth {
  if (warmth.dayHours === 0) return warmth;
  const dayMeanC = warmth.daySumC / warmth.dayHours;
  const meanC = Number.isNaN(warmth.meanC)
    ? dayMeanC
    : warmth.meanC + NEW_DAY_WEIGHT * (dayMeanC - warmth.meanC);
  const [, second, third] = warmth.nightsC;
  return { ...NO_WARMTH, nightsC: [second, third, warmth.dayMinC], meanC };
}
