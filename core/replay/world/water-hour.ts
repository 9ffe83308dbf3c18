import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** Share of the surplus over drained content that leaves in an hour. Chosen by us: most of it within some hours. */
const DRAINS_PER_H = 0.55;
/** Of what one layer fails to give, the other makes up this share as far as it can. Chosen by us. */
const MADE_UP_FRAC = 0.5;
/** Share of the can that runs out at the base when a grower waters until it runs through. Chosen by us, 10 to 15 % being usual. */
const RUN_OUT_FRAC = 0.12;
/** Surplus in the lower layer, as a share of its drained content, from which its base lacks air while it drains. Chosen by us. */
const DRAINING_FRAC = 0.02;

/** What an hour did with the water. */
export interface HourOfWater {
  wettedMl: number;
  drainedMl: number;
  wetBase: boolean;
}

/** Moves the water of one pot on by an hour: in, down, out, up and away. Changes the state; `into` is written over. */
export function waterHour(
  pot: WorldPot,
  state: WorldState,
  at: { et0Mm: number; rainMm: number; pourMl: number; into: HourOfWater },
): void {
  const { into, et0Mm } = at;
  into.wettedMl = at.rainMm * pot.catchMlPerMm + at.pourMl;
  into.drainedMl = 0;
  if (into.wettedMl > 0) takeIn(pot, state, into);
  drain(pot, state, into);
  evaporate(pot, state, et0Mm);
  transpire(pot, state, et0Mm);
  const move = pot.exchangeMlPerH * (state.lowerMl / pot.lowerFullMl - state.upperMl / pot.upperFullMl);
  state.lowerMl -= move;
  state.upperMl += move;
  into.wetBase = state.lowerMl > pot.wetAboveMl || state.lowerMl > (1 + DRAINING_FRAC) * pot.lowerFullMl;
}

/** The can that fills a pot and runs through, mL. */
export function runThroughMl(pot: WorldPot, state: WorldState): number {
  const missing = Math.max(0, pot.upperFullMl - state.upperMl) + Math.max(0, pot.lowerFullMl - state.lowerMl);
  return missing / (1 - RUN_OUT_FRAC) / (1 - pastShare(pot, state));
}

/** Usable water left, share; below zero when drier than the plant can dry it. */
export function usableLeft(pot: WorldPot, state: WorldState): number {
  return (state.upperMl + state.lowerMl - pot.unusableMl) / pot.usableMl;
}

/** Dry mix lets water run past it, along the wall and through cracks. */
function pastShare(pot: WorldPot, state: WorldState): number {
  return pot.hidden.runsPastFrac * Math.max(0, 1 - state.upperMl / pot.upperFullMl);
}

function takeIn(pot: WorldPot, state: WorldState, into: HourOfWater): void {
  const past = into.wettedMl * pastShare(pot, state);
  into.drainedMl += past;
  state.upperMl += into.wettedMl - past;
}

/** The upper layer hands on what it cannot hold at once; of the rest above drained content a share goes each hour. */
function drain(pot: WorldPot, state: WorldState, into: HourOfWater): void {
  const over = state.upperMl - pot.upperFullMl;
  if (over > 0) {
    const most = pot.upperSoakedMl - pot.upperFullMl;
    const down = Math.max(DRAINS_PER_H * over, over - most);
    state.upperMl -= down;
    state.lowerMl += down;
  }
  const surplus = state.lowerMl - pot.lowerFullMl;
  if (surplus > 0) {
    const most = pot.lowerSoakedMl - pot.lowerFullMl;
    const out = Math.max(DRAINS_PER_H * surplus, surplus - most);
    state.lowerMl -= out;
    into.drainedMl += out;
  }
}

/** At the demand's pace until the readily evaporable part is gone, then slower on a straight line. [FAO56 eq. 74] */
function evaporate(pot: WorldPot, state: WorldState, et0Mm: number): void {
  const gone = Math.max(0, pot.upperFullMl - state.upperMl);
  const pace =
    gone <= pot.readilyMl ? 1 : Math.max(0, (pot.evaporableMl - gone) / (pot.evaporableMl - pot.readilyMl));
  state.upperMl -= Math.min(Math.max(0, pot.evaporableMl - gone), et0Mm * pot.surfaceMlPerMm * pace);
  if (pot.wallMlPerMm === 0) return;
  // Air dries mix no further than to its own dampness, through the wall as from the top.
  const content = state.upperMl + state.lowerMl;
  const free = Math.max(0, content - pot.airDryMl);
  if (free === 0) return;
  const wetness = free / (pot.capacityMl - pot.airDryMl);
  const wall = Math.min(0.2 * free, et0Mm * pot.wallMlPerMm * Math.sqrt(wetness));
  state.upperMl -= (wall * state.upperMl) / content;
  state.lowerMl -= (wall * state.lowerMl) / content;
}

/** Either layer by its roots and by how freely it gives, and each for the other in part. */
function transpire(pot: WorldPot, state: WorldState, et0Mm: number): void {
  const demand = et0Mm * pot.thirstMlPerMm * state.uptakeFrac;
  const upperUsable = state.upperMl - pot.upperUnusableMl;
  const lowerUsable = state.lowerMl - pot.lowerUnusableMl;
  const upperGives = gives(pot, upperUsable / (pot.upperFullMl - pot.upperUnusableMl));
  const lowerGives = gives(pot, lowerUsable / (pot.lowerFullMl - pot.lowerUnusableMl));
  const roots = pot.hidden.upperRootsFrac;
  let fromUpper = demand * roots * upperGives;
  let fromLower = demand * (1 - roots) * lowerGives;
  const lacks = MADE_UP_FRAC * (demand - fromUpper - fromLower);
  if (upperGives > lowerGives) fromUpper += lacks * upperGives;
  else fromLower += lacks * lowerGives;
  state.upperMl -= Math.min(Math.max(0, upperUsable), fromUpper);
  state.lowerMl -= Math.min(Math.max(0, lowerUsable), fromLower);
}

/** Uptake against demand, S-shaped in the usable share: half at the half-way point of stress, steep about it. [VG1987] */
function gives(pot: WorldPot, usableFrac: number): number {
  if (usableFrac <= 0) return 0;
  const ratio = pot.halfUptakeFrac / usableFrac;
  return 1 / (1 + ratio * ratio * ratio);
}
