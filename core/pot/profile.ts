import { findRoot } from "../mix/find-root.ts";
import { type Retention, waterFracAt } from "../mix/retention.ts";
import { waterMlAtRest } from "./hold-water.ts";
import type { Vessel } from "./vessel.ts";
import { mixDepthCm, volumeMlBetween } from "./vessel-shape.ts";

/** Level cuts from base to surface, both ends included. Chosen by us: finer than a drawing shows. */
const CUTS = 61;

/** Suction at the base of a pot that is dry for every purpose, cm. */
const DRY_BASE_CM = 1e6;

/** Share of the full pot to which its suction is found. */
const PRECISION_FRAC = 1e-8;

/** Water and air by height, as a picture of the pot needs them; index 0 is the base. */
export interface MoistureProfile {
  readonly heightCm: Float64Array;
  readonly waterFrac: Float64Array;
  /** Air in the pores that water can leave; under 0.1 roots run short. */
  readonly airFrac: Float64Array;
}

/**
 * How a content of water lies in the pot once it has come to rest. Less than the mix gives up at any suction is spread
 * evenly; more than it can take up is drawn as full.
 */
export function moistureProfile(input: {
  retention: Retention;
  vessel: Vessel;
  waterMl: number;
}): MoistureProfile {
  const { retention, vessel, waterMl } = input;
  const depthCm = mixDepthCm(vessel);
  const suctionAtBaseCm = suctionAtBaseCmOf(input);
  const driestMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: DRY_BASE_CM });
  const thin = waterMl < driestMl ? Math.max(0, waterMl) / driestMl : 1;
  const heightCm = Float64Array.from({ length: CUTS }, (_, i) => (depthCm * i) / (CUTS - 1));
  const waterFrac = heightCm.map((height) => thin * waterFracAt(retention, height + suctionAtBaseCm));
  return { heightCm, waterFrac, airFrac: waterFrac.map((frac) => retention.saturatedFrac - frac) };
}

/** Suction at the base at which the pot holds a content, cm; below zero while water stands in it. */
export function suctionAtBaseCmOf(input: { retention: Retention; vessel: Vessel; waterMl: number }): number {
  const { retention, vessel, waterMl } = input;
  const depthCm = mixDepthCm(vessel);
  const fullMl = retention.saturatedFrac * volumeMlBetween(vessel, { fromCm: 0, toCm: depthCm });
  if (waterMl >= fullMl) return -depthCm;
  const warped = findRoot(
    (at) => waterMlAtRest({ retention, vessel, suctionAtBaseCm: unwarp(at, depthCm) }) - waterMl,
    { low: 0, high: warp(DRY_BASE_CM, depthCm), tolerance: PRECISION_FRAC * fullMl },
  );
  return unwarp(warped, depthCm);
}

/** Suctions span many powers of ten above zero and only the pot's depth below: search on their logarithm. */
function warp(suctionCm: number, depthCm: number): number {
  return Math.log1p(suctionCm + depthCm);
}

function unwarp(warped: number, depthCm: number): number {
  return Math.expm1(warped) - depthCm;
}
