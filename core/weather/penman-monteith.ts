import { saturationSlopeKPaPerC } from "./humidity.ts";
import { soilHeatHourMjPerM2 } from "./soil-heat.ts";

/** Which standard's hourly coefficients: FAO-56, or the short reference of the ASCE standardized equation. */
export type HourlyCoefficients = "fao56" | "asce-short";

/** Available energy, air and wind, as the equation takes them. */
export interface CombinationInput {
  readonly tempC: number;
  readonly netRadiationMjPerM2: number;
  readonly windAt2mMPerS: number;
  readonly psychrometricKPaPerC: number;
  readonly saturationDeficitKPa: number;
}

/**
 * Reference evapotranspiration of a day, mm; not floored. [FAO56 eq. 6]
 * Soil heat flux is 0 for a day (eq. 42); for a month take it off the net radiation first.
 */
export function et0OfDayMm(day: CombinationInput): number {
  const { windAt2mMPerS: wind, psychrometricKPaPerC: gamma } = day;
  const slope = saturationSlopeKPaPerC(day.tempC);
  const sun = 0.408 * slope * day.netRadiationMjPerM2;
  const air = ((gamma * 900) / (day.tempC + 273)) * wind * day.saturationDeficitKPa;
  return (sun + air) / (slope + gamma * (1 + 0.34 * wind));
}

/** Reference evapotranspiration of an hour, mm; not floored. [FAO56 eq. 53; ASCE2005 eq. 1, short reference] */
export function et0OfHourMm(hour: CombinationInput & { coefficients: HourlyCoefficients }): number {
  const { windAt2mMPerS: wind, psychrometricKPaPerC: gamma, netRadiationMjPerM2: net } = hour;
  const slope = saturationSlopeKPaPerC(hour.tempC);
  const sun = 0.408 * slope * (net - soilHeatHourMjPerM2(net));
  const air = ((gamma * 37) / (hour.tempC + 273)) * wind * hour.saturationDeficitKPa;
  return (sun + air) / (slope + gamma * (1 + windCoefficient(hour) * wind));
}

/** Cd of the equation: FAO56 has one, ASCE2005 Table 1 one for the day and one for the night. */
function windCoefficient(hour: { coefficients: HourlyCoefficients; netRadiationMjPerM2: number }): number {
  if (hour.coefficients === "fao56") return 0.34;
  return hour.netRadiationMjPerM2 < 0 ? 0.96 : 0.24;
}
