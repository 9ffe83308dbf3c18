import { type Care, careAfter, rootsFracOf, soaked } from "../../plant/aftercare.ts";
import { restNow } from "../../plant/rest.ts";
import { warmthAfter } from "../../plant/warmth.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { mmFromMl } from "../water-units.ts";
import type { PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";

const DAY_MS = 24 * HOUR_MS;
/** Rain of a day that counts as a soaking, share of capacity. Chosen by us. */
const SOAKING_FRAC = 0.1;
/** Cutting back took 40 % off at once and was made good in 60 days, in nursery shrubs. [REGAN1997] */
const PRUNED = { leftFrac: 0.6, backDays: 60 } as const;

/** What some hours of one day do to the plant, its water apart: warmth, healing, soaking rain. */
export function lived(
  state: PotState,
  hours: { forcing: SpotForcing; fromHour: number; toHour: number },
): PotState {
  const { forcing, fromHour, toHour } = hours;
  const startUtcMs = forcing.startUtcMs + fromHour * HOUR_MS;
  const tempC = forcing.plantTempC.subarray(fromHour, toHour);
  const warmth = warmthAfter(state.warmth, { startUtcMs, tempC });
  const after = { ...state, warmth, atUtcMs: forcing.startUtcMs + toHour * HOUR_MS, blindHours: 0 };
  if (after.care === null || after.careOver) return after;
  return careThrough(after, { rainMm: forcing.rainMm.subarray(fromHour, toHour), startUtcMs, tempC });
}

/** Nothing is left to heal or to wait for. */
function isWhole(care: Care): boolean {
  return care.healedUtcMs !== null && care.firstDrinkUtcMs !== null && rootsFracOf(care) === 1;
}

/** Aftercare through the hours; rain that sums to a soaking within the day begins the wait anew. */
function careThrough(
  state: PotState,
  hours: { rainMm: Float64Array; tempC: Float64Array; startUtcMs: number },
): PotState {
  const { hold } = state.planting!.inVessel;
  const soakingMm = mmFromMl({ waterMl: SOAKING_FRAC * hold.capacityMl, areaCm2: hold.rimAreaCm2 });
  let care = state.care!;
  let { dayRainMm } = state;
  let done = 0;
  for (let i = 0; i < hours.rainMm.length; i++) {
    const before = dayRainMm;
    dayRainMm += hours.rainMm[i]!;
    if (before >= soakingMm || dayRainMm < soakingMm) continue;
    const startUtcMs = hours.startUtcMs + done * HOUR_MS;
    care = careAfter(care, { startUtcMs, tempC: hours.tempC.subarray(done, i + 1) });
    care = soaked(care, hours.startUtcMs + (i + 1) * HOUR_MS);
    done = i + 1;
  }
  const startUtcMs = hours.startUtcMs + done * HOUR_MS;
  return { ...state, dayRainMm, care: careAfter(care, { startUtcMs, tempC: hours.tempC.subarray(done) }) };
}

/** What is decided once a day. */
export function dayBegun(state: PotState, context: ReplayContext): PotState {
  const { care } = state;
  return {
    ...withRest(state, context),
    dayRainMm: 0,
    rootsShareFrac: care === null ? 1 : inSteps(rootsFracOf(care)),
    shootsShareFrac: shootsShare(state),
    careOver: care !== null && isWhole(care),
  };
}

/** The state with rest decided from what is known now. */
export function withRest(state: PotState, context: ReplayContext): PotState {
  const { leaf, atUtcMs, warmth } = state;
  const report = leaf === null ? null : { state: leaf.state, ageDays: (atUtcMs - leaf.atUtcMs) / DAY_MS };
  const { values, latDeg } = context;
  const rest = restNow({ values, latDeg, warmth, utcMs: atUtcMs, leaf: report });
  return { ...state, rest: { ...rest, restingShareFrac: inSteps(rest.restingShareFrac) } };
}

function shootsShare({ prunedUtcMs, atUtcMs }: PotState): number {
  if (prunedUtcMs === null) return 1;
  const back = Math.min(1, (atUtcMs - prunedUtcMs) / (PRUNED.backDays * DAY_MS));
  return inSteps(PRUNED.leftFrac + (1 - PRUNED.leftFrac) * back);
}

/** Fiftieths: finer shares would only make the tank be built anew each day. */
function inSteps(shareFrac: number): number {
  return Math.round(shareFrac * 50) / 50;
}
