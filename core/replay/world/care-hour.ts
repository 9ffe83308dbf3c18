import { FRESH_CUT_HARM, FULL_WETTING_FRAC } from "../../plan/harm/wet-wound.ts";
import { woundHealingRate } from "../../plant/wound-healing.ts";
import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** Wetting of a day or by one pour that counts as a soaking, share of capacity; as the planner's replay has it. */
const SOAKING_FRAC = 0.1;

/**
 * Cuts close with warmth. Wetting an open one does harm, once for each planting, and a soaking sets it back by as much as it
 * is still open: a fresh one begins anew, one that has all but closed hardly minds. Chosen by us; a grower's calendar may
 * be a day off without the whole wait being lost.
 */
export function careOfHour(
  pot: WorldPot,
  state: WorldState,
  of: { leafC: number; rainMm: number; pourMl: number; wettedMl: number },
): number {
  const harm = state.closed ? 0 : woundHarm(pot, state, of.wettedMl);
  state.healedDays += woundHealingRate(of.leafC) / 24;
  if (!state.closed && state.healedDays >= state.needDays) state.closed = true;
  const soakingMl = SOAKING_FRAC * pot.capacityMl;
  const before = state.dayRainMm;
  state.dayRainMm += of.rainMm;
  const rainSoaks = before * pot.catchMlPerMm < soakingMl && state.dayRainMm * pot.catchMlPerMm >= soakingMl;
  if (!state.closed && (rainSoaks || of.pourMl >= soakingMl)) {
    state.healedDays *= state.healedDays / state.needDays;
  }
  return harm;
}

function woundHarm(pot: WorldPot, state: WorldState, wettedMl: number): number {
  if (wettedMl <= 0) return 0;
  const open = 1 - state.healedDays / state.needDays;
  const share = Math.min(1, wettedMl / (FULL_WETTING_FRAC * pot.capacityMl));
  const level = FRESH_CUT_HARM * open * share;
  const more = Math.max(0, level - state.worstWetting);
  state.worstWetting += more;
  return more;
}
