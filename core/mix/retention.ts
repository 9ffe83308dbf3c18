import type { RetentionCurve } from "./curve.ts";
import { curveWaterFrac } from "./curve-water.ts";

/** One component's share in a mix. The shares may sum to more than 1: fines lie in the voids of the coarse. */
export interface RetentionTerm {
  readonly shareFrac: number;
  readonly curve: RetentionCurve;
}

/**
 * What a mix holds at any suction: its components' curves added at equal suction, never above what its pores
 * can take up. All shares of the mix volume.
 */
export interface Retention {
  readonly terms: readonly RetentionTerm[];
  /** All pores, closed ones and those with trapped air included. */
  readonly totalPorosityFrac: number;
  /** Pores that fill when the mix is soaked. */
  readonly saturatedFrac: number;
  /** Held too tightly for roots. */
  readonly unusableFrac: number;
  /** Set by a test: the sum of the terms, as a share of their sum when soaked, is raised to a power. */
  readonly bent?: { readonly fromSaturatedFrac: number; readonly power: number };
}

/** Water held at a suction (cm of water), share of the mix volume. */
export function waterFracAt(retention: Retention, suctionCm: number): number {
  if (suctionCm <= 0) return retention.saturatedFrac;
  let waterFrac = 0;
  for (const term of retention.terms) waterFrac += term.shareFrac * curveWaterFrac(term.curve, suctionCm);
  const { bent, saturatedFrac } = retention;
  if (bent === undefined) return Math.min(waterFrac, saturatedFrac);
  return saturatedFrac * (waterFrac / bent.fromSaturatedFrac) ** bent.power;
}

/** Suctions beyond this are air-dry for every purpose here. */
const DRIEST_CM = 1e7;

/**
 * The suction at which the water falls to a given share: the largest suction that still holds at least as much.
 * Infinity when the mix holds it at any suction; 0 when not even the soaked mix holds it.
 */
export function suctionCmAt(retention: Retention, waterFrac: number): number {
  if (retention.saturatedFrac < waterFrac) return 0;
  if (waterFracAt(retention, DRIEST_CM) >= waterFrac) return Number.POSITIVE_INFINITY;
  let wetLog = -14;
  let dryLog = Math.log(DRIEST_CM);
  for (let step = 0; step < 60; step++) {
    const middle = (wetLog + dryLog) / 2;
    if (waterFracAt(retention, Math.exp(middle)) >= waterFrac) wetLog = middle;
    else dryLog = middle;
  }
  return Math.exp(wetLog);
}
