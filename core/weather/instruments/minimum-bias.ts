import type { JournalEntry } from "../../journal/entry.ts";
import type { SettledHours } from "../ladder/settle-hours.ts";
import { HOUR_MS } from "../weather.ts";
import { readingSpan, siteReadings } from "./reading-span.ts";

/** Steady difference of the place's night minimum from the forecast's, °C: what to add, and how sure that is. */
export interface MinimumBias {
  readonly meanC: number;
  readonly sdC: number;
}

/** One reading against the model's past, °C: the error of a short forecast and of a cheap thermometer together. */
const READING_SD_C = 1.5;
/** Days after which a reading counts half. Chosen by us: seasons change what a place does. */
const HALF_LIFE_DAYS = 14;
/** A reading farther off is a slip of scale or sign, not weather. Chosen by us. */
const MOST_DIFFERENCE_C = 10;
/** Least and most that is added to a forecast; warming is taken up by half only, because it lets plants stay out. */
const MOST_COOLING_C = 3;
const WARMING_TAKEN_FRAC = 0.5;

/**
 * What the grower's minimum thermometer says about forecasts of the minimum here: a weighted mean drawn towards
 * nothing by as much as the readings leave open. With a standard deviation of `placeSdC` before any reading, the first
 * one moves the forecast by less than a third of its difference.
 */
export function minimumBias(
  settled: SettledHours,
  known: { journal: readonly JournalEntry[]; placeSdC: number },
): MinimumBias {
  let weights = 0;
  let sum = 0;
  for (const { atUtcMs, body } of siteReadings(known.journal, "thermometer")) {
    const difference = minimumDifferenceC(settled, { atUtcMs, ...body });
    if (difference === null) continue;
    const nowUtcMs = settled.startUtcMs + settled.nowHour * HOUR_MS;
    const weight = 0.5 ** (Math.max(0, nowUtcMs - atUtcMs) / (24 * HOUR_MS) / HALF_LIFE_DAYS);
    weights += weight;
    sum += weight * difference;
  }
  const spread = READING_SD_C ** 2 + weights * known.placeSdC ** 2;
  const mean = (sum * known.placeSdC ** 2) / spread;
  return {
    meanC: mean > 0 ? WARMING_TAKEN_FRAC * mean : Math.max(-MOST_COOLING_C, mean),
    sdC: (known.placeSdC * READING_SD_C) / Math.sqrt(spread),
  };
}

/** Reading less the model's lowest hour of the same span; null when there was no night in it or it cannot be right. */
export function minimumDifferenceC(
  settled: SettledHours,
  reading: { sinceUtcMs: number; atUtcMs: number; minC: number },
): number | null {
  const span = readingSpan(settled, reading);
  if (!span) return null;
  const isNight = settled.sun.heightSine.subarray(span.fromHour, span.toHour).some((sine) => sine < 0);
  if (!isNight) return null;
  const temps = settled.columns.tempC.subarray(span.fromHour, span.toHour);
  const difference = reading.minC - temps.reduce((a, b) => Math.min(a, b));
  return Math.abs(difference) <= MOST_DIFFERENCE_C ? difference : null;
}
