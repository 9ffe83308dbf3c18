import { type Retention, suctionCmAt } from "../mix/retention.ts";
import type { Vessel } from "./vessel.ts";
import { mixDepthCm } from "./vessel-shape.ts";

/** Air below which roots run short of oxygen, share of the mix volume. [GRABLE1968, from memory] */
export const LEAST_AIR_FRAC = 0.1;

/**
 * Suction at which the pores have let in just enough air for roots, cm. Air is counted in the pores that water can
 * leave: closed pores and trapped bubbles carry no oxygen to a root.
 */
export function airySuctionCm(retention: Retention): number {
  return suctionCmAt(retention, retention.saturatedFrac - LEAST_AIR_FRAC);
}

/** Height above the base of the layer with too little air in a pot that has just drained, cm; the saucer lifts it. */
export function wetLayerCm(input: { retention: Retention; vessel: Vessel }): number {
  const { retention, vessel } = input;
  return Math.min(mixDepthCm(vessel), (vessel.saucerCm ?? 0) + airySuctionCm(retention));
}
