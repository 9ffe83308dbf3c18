/**
 * Reference evapotranspiration of a day from temperatures alone, mm. [FAO56 eq. 52]
 * Tends low above 3 m/s of wind and high in humid air.
 * @returns not floored; 0 for a range of 0
 */
export function hargreavesMm(day: {
  tempMinC: number;
  tempMaxC: number;
  extraterrestrialMjPerM2: number;
}): number {
  const mean = (day.tempMaxC + day.tempMinC) / 2;
  const range = Math.max(0, day.tempMaxC - day.tempMinC);
  // 0.408 turns MJ/m2 into the mm of water that the equation expects.
  return 0.0023 * (mean + 17.8) * Math.sqrt(range) * 0.408 * day.extraterrestrialMjPerM2;
}
