import type { MixInVessel } from "../mix/mix-in-vessel.ts";
import { airySuctionCm } from "./hold-layer.ts";
import { waterMlAtRest } from "./hold-water.ts";
import type { Vessel } from "./vessel.ts";
import { mixDepthCm } from "./vessel-shape.ts";

/**
 * A layer without air is in every pot that has just drained. It counts as waterlogged only when it is thicker than
 * this, cm and share of the depth: roots above it breathe. Chosen by us.
 */
const HARMLESS_LAYER = { cm: 2, depthFrac: 0.2 } as const;

/** Content, as a share of capacity, above which the layer without air is too thick; Infinity when it never is at rest. */
export function wetAboveFrac(inVessel: MixInVessel, vessel: Vessel): number {
  const { retention, hold } = inVessel;
  const harmlessCm = Math.max(HARMLESS_LAYER.cm, HARMLESS_LAYER.depthFrac * mixDepthCm(vessel));
  if (hold.wetLayerCm <= harmlessCm) return Number.POSITIVE_INFINITY;
  const suctionAtBaseCm = airySuctionCm(retention) - harmlessCm;
  return waterMlAtRest({ retention, vessel, suctionAtBaseCm }) / hold.capacityMl;
}
