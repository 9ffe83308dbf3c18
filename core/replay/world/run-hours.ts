import { harmOfHotHour, TENDER_BY_C } from "../../plan/harm/heat.ts";
import { drynessOf, harmOfDrought, standsDays } from "../../plan/harm/thirst.ts";
import { harmOfWetHours, paceAt, RECOVERY_PER_HOUR } from "../../plan/harm/wet-roots.ts";
import { careOfHour } from "./care-hour.ts";
import { closeDay, ROOTS_BACK_DAYS } from "./close-day.ts";
import { TERM } from "./harm-terms.ts";
import { type HourOfWater, runThroughMl, waterHour } from "./water-hour.ts";
import type { WorldClock } from "./world-clock.ts";
import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** What is done to a pot in one hour. */
export interface WorldDeed {
  readonly hour: number;
  /** Infinity means until it runs through. */
  readonly pourMl: number;
  readonly toSpot: number | null;
  readonly shield?: Shield;
}

/** A cover over the mix, or a pot leant so that half of its rim turns from the rain. A carry takes it off. */
export interface Shield {
  readonly letsInFrac: number;
  readonly coldLeftFrac: number;
  readonly untilHour: number;
}

/** What a stretch of hours came to. */
export interface Reckoning {
  /** By term, in the order of HARM_TERMS. */
  readonly harm: Float64Array;
  pouredMl: number;
  drainedMl: number;
}

const hourOfWater: HourOfWater = { wettedMl: 0, drainedMl: 0, wetBase: false };

/**
 * Runs one pot of the world through hours and scores them with the planner's own harm terms, applied to what truly is.
 * A season is longer than a plan: what the terms count up is carried on, and is made good as `closeDay` tells.
 *
 * @param deeds  in order of hours; those outside the span are passed over
 */
export function runWorldHours(
  world: { readonly clock: WorldClock; readonly pot: WorldPot },
  state: WorldState,
  span: { fromHour: number; toHour: number; deeds: readonly WorldDeed[]; into: Reckoning },
): void {
  const { clock, pot } = world;
  const { into, deeds } = span;
  let next = 0;
  for (let hour = span.fromHour; hour < span.toHour; hour++) {
    let pourMl = 0;
    for (; next < deeds.length && deeds[next]!.hour <= hour; next++) {
      const deed = deeds[next]!;
      if (deed.toSpot !== null) carried(state, { toSpot: deed.toSpot, hour });
      if (deed.shield !== undefined) shielded(state, deed.shield);
      pourMl += deed.pourMl === Number.POSITIVE_INFINITY ? runThroughMl(pot, state) : deed.pourMl;
    }
    into.pouredMl += pourMl;
    oneHour(world, state, { hour, pourMl, into });
    if (clock.closes[hour] === 1) closeDay(world, state, { hour, harm: into.harm });
  }
}

function carried(state: WorldState, to: { toSpot: number; hour: number }): void {
  state.spot = to.toSpot;
  state.shieldUntilHour = to.hour;
}

function shielded(state: WorldState, { letsInFrac, coldLeftFrac, untilHour }: Shield): void {
  state.letsInFrac = letsInFrac;
  state.coldLeftFrac = coldLeftFrac;
  state.shieldUntilHour = untilHour;
}

function oneHour(
  { clock, pot }: { readonly clock: WorldClock; readonly pot: WorldPot },
  state: WorldState,
  of: { hour: number; pourMl: number; into: Reckoning },
): void {
  const { hour, into } = of;
  const forcing = clock.spots[state.spot]!;
  const rainMm = forcing.rainMm[hour]! * (hour < state.shieldUntilHour ? state.letsInFrac : 1);
  const leafC = forcing.plantTempC[hour]!;
  const airC = forcing.tempC[hour]!;
  waterHour(pot, state, { et0Mm: forcing.et0Mm[hour]!, rainMm, pourMl: of.pourMl, into: hourOfWater });
  into.drainedMl += hourOfWater.drainedMl;
  into.harm[TERM.thirst]! += thirstOfHour(pot, state);
  into.harm[TERM["wet-roots"]]! += wetRootsOfHour(pot, state, airC);
  if (!state.closed || state.healedDays < state.needDays + ROOTS_BACK_DAYS) {
    into.harm[TERM["wet-wound"]]! += careOfHour(pot, state, {
      leafC,
      rainMm,
      pourMl: of.pourMl,
      wettedMl: hourOfWater.wettedMl,
    });
  }
  const limitC = pot.known.values.heatC - (state.tender ? TENDER_BY_C : 0);
  if (airC > limitC) {
    const lightMjPerM2 = forcing.lightMjPerM2[hour]!;
    into.harm[TERM.heat]! += harmOfHotHour({ tempC: airC, lightMjPerM2, limitC });
  }
  state.nightMinC = Math.min(state.nightMinC, leafC);
  state.lightMjPerM2 += forcing.lightMjPerM2[hour]!;
  state.tipRatio = Math.max(state.tipRatio, forcing.gustMPerS[hour]! / state.tipMPerS);
  state.warmthSumC += leafC;
  state.warmthHours++;
}

function thirstOfHour(pot: WorldPot, state: WorldState): number {
  const left = (state.upperMl + state.lowerMl - pot.unusableMl) / pot.usableMl;
  if (left >= state.refillFrac) {
    state.droughtShare = 0;
    return 0;
  }
  const before = state.droughtShare;
  const dryness = drynessOf(left, state.refillFrac);
  state.droughtShare = before + (dryness * dryness) / 24 / standsNow(pot, state);
  return harmOfDrought(state.droughtShare) - harmOfDrought(before);
}

/** Days of drought that the plant stands, resting as it does today. */
function standsNow({ known }: WorldPot, { restingFrac }: WorldState): number {
  return standsDays({ values: known.values, rest: { restingShareFrac: restingFrac } });
}

function wetRootsOfHour(pot: WorldPot, state: WorldState, airC: number): number {
  if (!hourOfWater.wetBase) {
    state.wetHours = Math.max(0, state.wetHours - RECOVERY_PER_HOUR);
    return 0;
  }
  const { wetBaseHours } = pot.known.values;
  const before = state.wetHours;
  state.wetHours = before + (1 + state.restingFrac) * paceAt(airC);
  if (state.wetHours <= wetBaseHours) return 0;
  return harmOfWetHours(state.wetHours / wetBaseHours) - harmOfWetHours(before / wetBaseHours);
}
