import type { RootWork } from "../journal/entry.ts";
import { HOUR_MS } from "../weather/weather.ts";
import { easeDays, firstDrinkFrac, noFeedDays, ROOTS_LEFT_FRAC, shadeDays } from "./care-days.ts";
import { woundHealingRate } from "./wound-healing.ts";

const DAY_MS = 24 * HOUR_MS;
/** Days at 20 °C in which lost roots grow back once the cut has closed. Chosen by us. */
const ROOTS_BACK_DAYS = 42;
/** Feed waits at least this long after the first drink is due. Chosen by us. */
const FEED_AFTER_DRINK_DAYS = 14;
/** A cut that would take longer than this in the cold is dated so far ahead and no further. */
const LONGEST_DAYS = 180;

/** How far a pot has come since its roots were worked on. */
export interface Care {
  readonly plantedUtcMs: number;
  readonly roots: RootWork;
  readonly leafy: boolean;
  /** Days at 20 °C that the roots stay dry. */
  readonly needDays: number;
  /** Days at 20 °C that have passed since planting or the last soaking. */
  readonly healedDays: number;
  /** When the cut had closed; null while it is open. */
  readonly healedUtcMs: number | null;
  /** The last soaking of an open cut, which began the wait anew. */
  readonly soakedUtcMs: number | null;
  /** First water after the wait; null while there was none. */
  readonly firstDrinkUtcMs: number | null;
}

/** Aftercare as it stands. All of it is common practice, not the outcome of trials, but for the law of temperature. */
export interface AftercareNow {
  readonly stage: "dry" | "first-drink" | "easing" | "done";
  readonly roots: RootWork;
  readonly plantedUtcMs: number;
  /** Set when a soaking began the wait anew. */
  readonly soakedUtcMs: number | null;
  readonly dryUntilUtcMs: number;
  readonly shadeUntilUtcMs: number;
  readonly noFeedUntilUtcMs: number;
  /** When the last of it is over. */
  readonly doneUtcMs: number;
  /** 0 on planting, 1 when the cut has closed. */
  readonly healedFrac: number;
  /** How much slower than at 20 °C it closes in the warmth that is reckoned with. */
  readonly slowedBy: number;
  /** Size of the first drink, share of capacity. */
  readonly firstDrinkFrac: number;
  /** Share of full sun that the plant may have now. */
  readonly sunFrac: number;
  /** Share of its roots that it has. */
  readonly rootsFrac: number;
  readonly status: "common-practice";
}

/** Aftercare at the moment of planting. */
export function careFrom(planting: {
  plantedUtcMs: number;
  roots: RootWork;
  leafy: boolean;
  needDays: number;
  wateredIn: boolean;
}): Care {
  const { plantedUtcMs, roots, leafy, needDays, wateredIn } = planting;
  const healedUtcMs = needDays > 0 ? null : plantedUtcMs;
  const firstDrinkUtcMs = wateredIn && needDays === 0 ? plantedUtcMs : null;
  return {
    plantedUtcMs,
    roots,
    leafy,
    needDays,
    healedDays: 0,
    healedUtcMs,
    soakedUtcMs: null,
    firstDrinkUtcMs,
  };
}

/** Further by some hours, the first of which begins at `startUtcMs`. */
export function careAfter(care: Care, hours: { startUtcMs: number; tempC: Float64Array }): Care {
  let { healedDays, healedUtcMs } = care;
  for (const [i, tempC] of hours.tempC.entries()) {
    healedDays += woundHealingRate(tempC) / 24;
    if (healedUtcMs === null && healedDays >= care.needDays)
      healedUtcMs = hours.startUtcMs + (i + 1) * HOUR_MS;
  }
  return { ...care, healedDays, healedUtcMs };
}

/** A soaking: begins the wait anew while the cut is open, and is the first drink afterwards. */
export function soaked(care: Care, utcMs: number): Care {
  if (care.healedUtcMs === null) return { ...care, healedDays: 0, soakedUtcMs: utcMs };
  return care.firstDrinkUtcMs === null ? { ...care, firstDrinkUtcMs: utcMs } : care;
}

/**
 * Where aftercare stands at an instant, with its dates.
 *
 * @param expectedTempC  what the coming days are reckoned to be like for the roots, °C; dates move with it
 */
export function aftercareNow(care: Care, at: { utcMs: number; expectedTempC: number }): AftercareNow {
  const { plantedUtcMs, roots, leafy, soakedUtcMs } = care;
  const rate = Math.max(1 / 100, woundHealingRate(at.expectedTempC));
  const leftDays = Math.min(LONGEST_DAYS, Math.max(0, care.needDays - care.healedDays) / rate);
  const dryUntilUtcMs = care.healedUtcMs ?? at.utcMs + leftDays * DAY_MS;
  const kind = { roots, leafy };
  const shadeUntilUtcMs = Math.max(plantedUtcMs + shadeDays(kind) * DAY_MS, dryUntilUtcMs);
  const noFeedUntilUtcMs = Math.max(
    plantedUtcMs + noFeedDays(kind) * DAY_MS,
    dryUntilUtcMs + (care.needDays > 0 ? FEED_AFTER_DRINK_DAYS * DAY_MS : 0),
  );
  const fullSunUtcMs = shadeUntilUtcMs + easeDays(kind) * DAY_MS;
  const doneUtcMs = Math.max(fullSunUtcMs, noFeedUntilUtcMs);
  return {
    stage: stageOf(care, { utcMs: at.utcMs, doneUtcMs }),
    roots,
    plantedUtcMs,
    soakedUtcMs,
    dryUntilUtcMs,
    shadeUntilUtcMs,
    noFeedUntilUtcMs,
    doneUtcMs,
    healedFrac: care.healedUtcMs === null ? care.healedDays / care.needDays : 1,
    slowedBy: 1 / rate,
    firstDrinkFrac: firstDrinkFrac(leafy),
    sunFrac: sunFracAt(at.utcMs, { shadeUntilUtcMs, fullSunUtcMs }),
    rootsFrac: rootsFracOf(care),
    status: "common-practice",
  };
}

/** Share of its roots that a plant has: what the work left, grown back with warm days once the cut has closed. */
export function rootsFracOf(care: Care): number {
  const left = ROOTS_LEFT_FRAC[care.roots];
  const grownDays = care.healedUtcMs === null ? 0 : care.healedDays - care.needDays;
  return left + (1 - left) * Math.min(1, Math.max(0, grownDays / ROOTS_BACK_DAYS));
}

function stageOf(care: Care, at: { utcMs: number; doneUtcMs: number }): AftercareNow["stage"] {
  if (care.healedUtcMs === null) return "dry";
  if (at.utcMs >= at.doneUtcMs) return "done";
  return care.firstDrinkUtcMs === null ? "first-drink" : "easing";
}

/** Bright shade first, then evenly up to full sun. */
function sunFracAt(utcMs: number, dates: { shadeUntilUtcMs: number; fullSunUtcMs: number }): number {
  const inShade = 0.4;
  const { shadeUntilUtcMs, fullSunUtcMs } = dates;
  if (utcMs >= fullSunUtcMs) return 1;
  if (utcMs <= shadeUntilUtcMs) return inShade;
  return inShade + ((1 - inShade) * (utcMs - shadeUntilUtcMs)) / (fullSunUtcMs - shadeUntilUtcMs);
}
