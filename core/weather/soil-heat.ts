/** Soil heat flux in an hour, MJ/m2: by day while net radiation is not negative. [FAO56 eq. 45 and 46] */
export function soilHeatHourMjPerM2(netRadiationMjPerM2: number): number {
  return (netRadiationMjPerM2 < 0 ? 0.5 : 0.1) * netRadiationMjPerM2;
}

/**
 * Mean soil heat flux of a month, MJ/m2/day: from the months before and after where both are known, else from the
 * month itself and the one before. [FAO56 eq. 43 and 44]
 */
export function soilHeatMonthMjPerM2(
  mean: { readonly beforeC: number } & ({ readonly afterC: number } | { readonly monthC: number }),
): number {
  return "afterC" in mean ? 0.07 * (mean.afterC - mean.beforeC) : 0.14 * (mean.monthC - mean.beforeC);
}
