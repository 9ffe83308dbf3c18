import { careAfter, rootsFracOf, soaked } from "../../plant/aftercare.ts";
import { restNow } from "../../plant/rest.ts";
import { warmthAfter } from "../../plant/warmth.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { runHours } from "../balance/run-hours.ts";
import { tankOf } from "../balance/tank-of.ts";
import { setUnknownWetness } from "../learn/wetness.ts";
import { copyParticles, type Particles } from "../particles.ts";
import { mmFromMl } from "../water-units.ts";
import type { PotState } from "./pot-state.ts";
import { type ReplayContext, tankPlanOfState } from "./replay-context.ts";
import { seedFor } from "./seed-for.ts";

const DAY_MS = 24 * HOUR_MS;
/** A gap in the weather longer than this leaves the content unknown. Chosen by us. */
const BLIND_HOURS = 36;
/** Rain of a day that counts as a soaking, share of capacity. Chosen by us. */
const SOAKING_FRAC = 0.1;
/** Cutting back took 40 % off at once and was made good in 60 days, in nursery shrubs. [REGAN, from memory] */
const PRUNED = { leftFrac: 0.6, backDays: 60 } as const;

/** The state some whole hours later, through the weather where the pot stands. Stretches end with each UTC day. */
export function runTo(state: PotState, untilUtcMs: number, context: ReplayContext): PotState {
  let now = state;
  while (now.atUtcMs + HOUR_MS <= untilUtcMs) {
    const dayEnds = (Math.floor(now.atUtcMs / DAY_MS) + 1) * DAY_MS;
    now = runStretch(now, Math.min(dayEnds, untilUtcMs - (untilUtcMs % HOUR_MS)), context);
  }
  return now;
}

function runStretch(state: PotState, untilUtcMs: number, context: ReplayContext): PotState {
  const forcing = context.past.get(state.spotId);
  const known = knownSpan(forcing, { fromUtcMs: state.atUtcMs, untilUtcMs });
  const next =
    forcing === undefined || known === null
      ? goneBlind(state, untilUtcMs)
      : seenThrough(state, { forcing, ...known, untilUtcMs }, context);
  return next.atUtcMs % DAY_MS === 0 ? dayBegun(next, context) : next;
}

/** Hours of the forcing within a stretch; null when there is none. */
function knownSpan(
  forcing: SpotForcing | undefined,
  stretch: { fromUtcMs: number; untilUtcMs: number },
): { fromHour: number; toHour: number } | null {
  if (forcing === undefined) return null;
  const fromHour = Math.max(0, (stretch.fromUtcMs - forcing.startUtcMs) / HOUR_MS);
  const toHour = Math.min(forcing.hourCount, (stretch.untilUtcMs - forcing.startUtcMs) / HOUR_MS);
  return fromHour < toHour ? { fromHour, toHour } : null;
}

function goneBlind(state: PotState, untilUtcMs: number): PotState {
  const blindHours = state.blindHours + (untilUtcMs - state.atUtcMs) / HOUR_MS;
  return { ...state, atUtcMs: untilUtcMs, blindHours };
}

interface Seen {
  readonly forcing: SpotForcing;
  readonly fromHour: number;
  readonly toHour: number;
  readonly untilUtcMs: number;
}

function seenThrough(state: PotState, seen: Seen, context: ReplayContext): PotState {
  const { forcing, fromHour, toHour, untilUtcMs } = seen;
  const startUtcMs = forcing.startUtcMs + fromHour * HOUR_MS;
  const tempC = forcing.plantTempC.subarray(fromHour, toHour);
  const warmth = warmthAfter(state.warmth, { startUtcMs, tempC });
  const after = { ...state, warmth, atUtcMs: untilUtcMs, blindHours: 0 };
  if (state.planting === null || state.particles === null) return after;
  const particles = knownWetness(state, context)!;
  const tank = tankOf(tankPlanOfState(state, context), particles);
  runHours(tank, { forcing, fromHour, toHour, pourMl: 0 }, null);
  return careThrough(
    { ...after, particles },
    { rainMm: forcing.rainMm.subarray(fromHour, toHour), startUtcMs, tempC },
  );
}

/** The particles, spread over all contents that may be when the weather was not known for too long. */
export function knownWetness(state: PotState, context: ReplayContext): Particles | null {
  if (state.particles === null || state.blindHours <= BLIND_HOURS) return state.particles;
  const particles = copyParticles(state.particles);
  const tank = tankOf(tankPlanOfState(state, context), particles);
  setUnknownWetness(tank, { plan: context, seed: seedFor(context, "unknown") });
  return particles;
}

/** Aftercare through the stretch; rain that sums to a soaking within the day begins the wait anew. */
function careThrough(
  state: PotState,
  hours: { rainMm: Float64Array; tempC: Float64Array; startUtcMs: number },
): PotState {
  if (state.care === null) return state;
  const { hold } = state.planting!.inVessel;
  const soakingMm = mmFromMl({ waterMl: SOAKING_FRAC * hold.capacityMl, areaCm2: hold.rimAreaCm2 });
  let { care, dayRainMm } = state;
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
function dayBegun(state: PotState, context: ReplayContext): PotState {
  const rootsShareFrac = state.care === null ? 1 : inSteps(rootsFracOf(state.care));
  return { ...withRest(state, context), dayRainMm: 0, rootsShareFrac, shootsShareFrac: shootsShare(state) };
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
