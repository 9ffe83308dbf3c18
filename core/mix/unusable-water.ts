import type { RetentionCurve } from "./curve.ts";
import { curveWaterFrac } from "./curve-water.ts";

/** Suction against which roots stop drawing, cm of water: 1.5 MPa. [VEIHMEYER1949] */
const WILTING_CM = 15_300;

/**
 * Share of the water inside porous grains that roots can draw. Chosen by us because grains give up their inner water
 * within two days of open air, so it is not bound, yet roots reach only the grains they touch.
 */
const INNER_WATER_USABLE_FRAC = 0.5;

/** Water that roots cannot take from a material, share of its volume: what is left at 1.5 MPa. */
export function unusableFracOf(curve: RetentionCurve): number {
  return curveWaterFrac(curve, WILTING_CM);
}

/**
 * The same for loose grains. Their fitted residual stands for water inside the grains and not for bound water, so part
 * of it counts as usable.
 */
export function unusableFracOfGrains(curve: RetentionCurve): number {
  return unusableFracOf(curve) - INNER_WATER_USABLE_FRAC * curve.residualFrac;
}
