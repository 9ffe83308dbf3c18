/**
 * Share of the sun's light that comes from the whole sky rather than from the sun itself, 0 to 1, for an hour,
 * from its clearness (sun at the ground over sun above the air). [ERBS1982; coefficients read in public codes that cite it]
 */
export function diffuseShareFrac(clearnessFrac: number): number {
  const k = clearnessFrac;
  if (!(k > 0)) return 1;
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}
