/**
 * Fall speed of the median drop by rain rate, m/s. [BEST1950 for the drop, ATLAS1973 for its speed]
 * Valid from drizzle (0.1 mm/h) up; below that held at its value.
 */
export function dropFallMPerS(rainMmPerH: number): number {
  const rate = Math.max(0.1, rainMmPerH);
  // Best: sizes follow exp(-(d / a)^2.25) with a = 1.30 R^0.232, all from memory; ln 2 gives the median by volume.
  const dropMm = 1.3 * rate ** 0.232 * Math.LN2 ** (1 / 2.25);
  return 9.65 - 10.3 * Math.exp(-0.6 * dropMm);
}

/**
 * Share of the rain that reaches pots behind a roof edge, 0 to 0.5.
 *
 * The drip line moves in by height x wind / fall speed when the wind blows square at it, and by the cosine of the
 * angle when it does not. With every direction as likely, the share of time in which it passes the pots is
 * arccos(needed wind / wind) / pi. Eddies under the roof, splash and the run-off at the drip line itself are left
 * out, so this is a lower bound.
 * @param rain.windMPerS wind at the height of the pots
 */
export function roofEdgeShareFrac(
  edge: { heightM: number; behindM: number },
  rain: { rainMmPerH: number; windMPerS: number },
): number {
  if (!(rain.windMPerS > 0) || !(edge.heightM > 0)) return 0;
  const needed = (edge.behindM * dropFallMPerS(rain.rainMmPerH)) / edge.heightM;
  return needed >= rain.windMPerS ? 0 : Math.acos(needed / rain.windMPerS) / Math.PI;
}
