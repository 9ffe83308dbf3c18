import type { RetentionCurve } from "./curve.ts";

/**
 * Water held by a material at a suction, share of its volume. [VG1980 eq. 21 with m = 1 - 1/n]
 *
 * @param suctionCm  suction as a height of water, cm; zero and below is saturation
 */
export function curveWaterFrac(curve: RetentionCurve, suctionCm: number): number {
  if (suctionCm <= 0) return curve.saturatedFrac;
  const drained = 1 + (curve.alphaPerCm * suctionCm) ** curve.n;
  return curve.residualFrac + (curve.saturatedFrac - curve.residualFrac) * drained ** (1 / curve.n - 1);
}
