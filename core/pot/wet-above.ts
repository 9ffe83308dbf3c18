import type { MixInVessel } from "../mix/mix-in-vessel.ts";
import { airySuctionCm } from "./hold-layer.ts";
import { waterMlAtRest } from "./hold-water.ts";
import type { Vessel } from "./vessel.ts";

/**
 * A layer without air lies in every pot that has just drained. It counts as waterlogged only while it is thicker than
 * this: the lowest centimetre lies among the holes, which let in air. Chosen by us.
 */
const HARMLESS_LAYER_CM = 1;

/** Content, as a share of capacity, above which the layer without air is too thick; Infinity when it never is at rest. */
export function wetAboveFrac(inVessel: MixInVessel, vessel: Vessel): number {
  const { retention, hold } = inVessel;
  if (hold.wetLayerCm <= HARMLESS_LAYER_CM) return Number.POSITIVE_INFINITY;
  const suctionAtBaseCm = airySuctionCm(retention) - HARMLESS_LAYER_CM;
  return waterMlAtRest({ retention, vessel, suctionAtBaseCm }) / hold.capacityMl;
}
