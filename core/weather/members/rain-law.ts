import { normalShareBelow, normalValueAt } from "../normal-curve.ts";

/** How daily rain is spread at a site: a share of wet days, and on those a Weibull law of amounts. */
export interface RainLaw {
  readonly wetShareFrac: number;
  readonly scaleMm: number;
}

/** A day counts as wet from here, mm: the hundredth of an inch of the gauges behind the published scores. */
export const WET_DAY_MM = 0.25;
/** Amounts of wet days have a longer tail than the exponential law. Shape chosen by us within the usual 0.7 to 0.8. */
const SHAPE = 0.75;
/** Mean over scale of that law: gamma of 1 + 1 / 0.75. */
const MEAN_OVER_SCALE = 1.1906;

/** What is believed before a day is seen: three wet days in ten, 8 mm on each, weighing as much as ten days. */
const PRIOR = { days: 10, wetDays: 3, wetDayMm: 8 } as const;

/** The law of a site from its known days; the belief above until there are enough. */
export function rainLaw(dailyRainMm: readonly number[]): RainLaw {
  const wet = dailyRainMm.filter((mm) => mm >= WET_DAY_MM);
  const sum = wet.reduce((a, b) => a + b, 0);
  const wetDays = wet.length + PRIOR.wetDays;
  const meanMm = (sum + PRIOR.wetDays * PRIOR.wetDayMm) / wetDays;
  return {
    wetShareFrac: wetDays / (dailyRainMm.length + PRIOR.days),
    scaleMm: meanMm / MEAN_OVER_SCALE,
  };
}

/** Normal score above which a day is wet. */
export function wetScore(law: RainLaw): number {
  return normalValueAt(1 - law.wetShareFrac);
}

/** Normal score of a wet day's amount. */
export function scoreOfRain(law: RainLaw, rainMm: number): number {
  const beyond = Math.exp(-(((rainMm - WET_DAY_MM) / law.scaleMm) ** SHAPE));
  return normalValueAt(1 - law.wetShareFrac * Math.min(1, beyond));
}

/** Amount of a normal score, mm; 0 up to the wet score. */
export function rainOfScore(law: RainLaw, score: number): number {
  const above = 1 - normalShareBelow(score);
  if (above >= law.wetShareFrac) return 0;
  const beyond = Math.max(1e-6, above / law.wetShareFrac);
  return WET_DAY_MM + law.scaleMm * (-Math.log(beyond)) ** (1 / SHAPE);
}

/** Score of a day that was told dry: somewhere among the dry days, nobody knows how near to rain. @param drawFrac 0 to 1 */
export function scoreOfDry(law: RainLaw, drawFrac: number): number {
  return dryScores(law)(drawFrac);
}

/** The same for many draws from one law. */
export function dryScores(law: RainLaw): (drawFrac: number) => number {
  const dryFrac = normalShareBelow(wetScore(law));
  return (drawFrac) => normalValueAt(drawFrac * dryFrac);
}

/**
 * What truly falls, mm, where a score was told that goes with the truth's by a correlation: shrunk by it, given an
 * error, and turned back.
 */
export function rainFallenMm(
  law: RainLaw,
  of: { toldScore: number; correlation: number; error: number },
): number {
  const { toldScore, correlation, error } = of;
  return rainOfScore(law, correlation * toldScore + Math.sqrt(1 - correlation ** 2) * error);
}

/** Most that a day's told rain is stretched to over itself. Chosen by us. */
export const MOST_STRETCH = 8;
