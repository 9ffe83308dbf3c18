import { AWAY_HARM_PER_DAY } from "../../plan/choice/standing.ts";
import { harmOfNight } from "../../plan/harm/cold.ts";
import { harmOfDimDay } from "../../plan/harm/gloom.ts";
import { harmOfGust, tippingGustMPerS } from "../../plan/harm/toppling.ts";
import { coldness, DAMP_FRAC, harmOfColdNights, WET_FRAC } from "../../plan/harm/wet-cold.ts";
import { ROOTS_LEFT_FRAC, shadeDays } from "../../plant/care-days.ts";
import { restNow } from "../../plant/rest.ts";
import { NO_WARMTH } from "../../plant/warmth.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { TERM } from "./harm-terms.ts";
import type { WorldClock } from "./world-clock.ts";
import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** Weight of a new day in the mean of ten days or so, as the planner's warmth has it. */
const NEW_DAY_WEIGHT = 0.1;
/** Days at 20 °C after closing in which lost roots grow back; as the planner's aftercare has it. */
export const ROOTS_BACK_DAYS = 42;
/**
 * A wet cold night is made good by one that is not cold at all, less so the colder that one is, and not by one that is half
 * as cold as the limit: a winter of nights a shade too cool is not the sum of its shades. Chosen by us; the planner's
 * term has no end but its horizon's.
 */
const COLD_RECOVERY_NIGHTS = 1;

/** Scores what is scored by the day, and decides what holds for the next. */
export function closeDay(
  { clock, pot }: { readonly clock: WorldClock; readonly pot: WorldPot },
  state: WorldState,
  at: { hour: number; harm: Float64Array },
): void {
  const { values } = pot.known;
  const { harm } = at;
  state.threeNightC = (state.nightMinC + state.lastNightC + state.nightBeforeC) / 3;
  const coldLeft = at.hour <= state.shieldUntilHour ? state.coldLeftFrac : 1;
  harm[TERM.cold]! += coldLeft * harmOfNight(state.nightMinC, values);
  harm[TERM["wet-cold"]]! += wetColdOfNight(pot, state);
  harm[TERM.wind]! += state.tipRatio > 0 ? harmOfGust(state.tipRatio, 1) : 0;
  harm[TERM.gloom]! += harmOfDimDay({
    lightMjPerM2: state.lightMjPerM2,
    needMjPerM2: values.lightMjPerM2PerDay,
    restingShareFrac: state.restingFrac,
    leaflessIsRest: values.leaflessIsRest,
  });
  if (state.spot !== pot.known.homeSpot) harm[TERM.away]! += AWAY_HARM_PER_DAY;
  turnOver(state);
  settleDay({ clock, pot }, state, at.hour + 1);
}

function wetColdOfNight(pot: WorldPot, state: WorldState): number {
  const { stopWaterNightC: stopC, cutWaterNightC: cutC } = pot.known.values;
  if (stopC === null) return 0;
  const cold = coldness(state.threeNightC, { stopC, cutC });
  const frac = (state.upperMl + state.lowerMl) / pot.capacityMl;
  const wet = Math.min(1, Math.max(0, (frac - DAMP_FRAC) / (WET_FRAC - DAMP_FRAC)));
  const before = state.coldNights;
  const madeGood = COLD_RECOVERY_NIGHTS * Math.max(0, 1 - 2 * cold);
  state.coldNights = Math.max(0, before + cold * wet - madeGood);
  return Math.max(0, harmOfColdNights(state.coldNights) - harmOfColdNights(before));
}

function turnOver(state: WorldState): void {
  const dayMeanC = state.warmthSumC / Math.max(1, state.warmthHours);
  state.meanC += NEW_DAY_WEIGHT * (dayMeanC - state.meanC);
  state.nightBeforeC = state.lastNightC;
  state.lastNightC = state.nightMinC;
  state.nightMinC = Number.POSITIVE_INFINITY;
  state.lightMjPerM2 = 0;
  state.tipRatio = 0;
  state.warmthSumC = 0;
  state.warmthHours = 0;
  state.dayRainMm = 0;
}

/** Rest, refill point, uptake and tipping speed for the day that begins. */
export function settleDay(
  { clock, pot }: { readonly clock: WorldClock; readonly pot: WorldPot },
  state: WorldState,
  hour: number,
): void {
  const { values } = pot.known;
  // A plant that rests at warmer nights is one for which the nights are as much colder.
  const nightC = state.threeNightC - pot.hidden.restsAtWarmerC;
  const warmth = { ...NO_WARMTH, nightsC: [nightC, nightC, nightC] as const, meanC: state.meanC };
  const utcMs = clock.startUtcMs + hour * HOUR_MS;
  const { restingShareFrac } = restNow({ values, warmth, latDeg: clock.site.latDeg, utcMs, leaf: null });
  const rest = restingShareFrac;
  const left = ROOTS_LEFT_FRAC[state.roots];
  const grown = state.closed ? (state.healedDays - state.needDays) / ROOTS_BACK_DAYS : 0;
  state.restingFrac = rest;
  state.refillFrac = values.refillFrac * (1 - rest) + values.restRefillFrac * rest;
  state.uptakeFrac =
    (values.basalCoefficient * (1 - rest) + values.restCoefficient * rest) *
    (left + (1 - left) * Math.min(1, Math.max(0, grown)));
  state.tender =
    !state.closed || hour < state.plantedHour + 24 * shadeDays({ roots: state.roots, leafy: values.leafy });
  state.tipMPerS = tipOf(pot, state);
}

function tipOf({ known, dryMassKg }: WorldPot, state: WorldState): number {
  const { vessel, pot } = known;
  return tippingGustMPerS({
    massKg: Math.max(0.05, dryMassKg + (state.upperMl + state.lowerMl) / 1000),
    baseCm: vessel.baseCm,
    topCm: vessel.topCm,
    heightCm: vessel.heightCm,
    canopyWidthCm: pot.canopyWidthCm,
    plantHeightCm: pot.plantHeightCm,
  });
}
