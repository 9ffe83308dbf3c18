import type { HourlyCoefficients } from "./penman-monteith.ts";

/** Stefan-Boltzmann constant, MJ/m2/K4 in a day. [FAO56 eq. 39] */
const SIGMA_DAY = 4.903e-9;
/** The same in an hour, as each standard prints it. [FAO56 eq. 53; ASCE2005 hourly net longwave] */
const SIGMA_HOUR: Readonly<Record<HourlyCoefficients, number>> = {
  fao56: 2.043e-10,
  "asce-short": 2.042e-10,
};

/**
 * Rs/Rso held to 0.3 to 1. FAO56 prints only the upper limit and says that the ratio runs from about 0.33 (dense
 * cloud) to 1; the lower limit is that of ASCE2005 and of common practice in programs.
 */
export function limitedCloudRatioFrac(ratioFrac: number): number {
  return Math.min(1, Math.max(0.3, ratioFrac));
}

/**
 * Rs/Rso for a night without an afternoon before it: middle of the paper's 0.4-0.6 for humid and 0.7-0.8 for dry
 * climates. [FAO56 ch. 4, calculation procedure for hourly steps]
 * Air of the hour stands for the climate: dry below 50 % relative humidity, chosen by us because the paper names none.
 */
export function defaultCloudRatioFrac(rhFrac: number): number {
  return rhFrac >= 0.5 ? 0.5 : 0.75;
}

/** Net loss by longwave in a day, MJ/m2. [FAO56 eq. 39] */
export function netLongwaveDayMjPerM2(day: {
  tempMinC: number;
  tempMaxC: number;
  vapourPressureKPa: number;
  cloudRatioFrac: number;
}): number {
  const sky = SIGMA_DAY * (((day.tempMaxC + 273.16) ** 4 + (day.tempMinC + 273.16) ** 4) / 2);
  return sky * humidityTerm(day.vapourPressureKPa) * cloudTerm(day.cloudRatioFrac);
}

/** Net loss by longwave in an hour, MJ/m2; by FAO56 unless told otherwise. [FAO56 eq. 39 with the hourly constant] */
export function netLongwaveHourMjPerM2(hour: {
  tempC: number;
  vapourPressureKPa: number;
  cloudRatioFrac: number;
  coefficients?: HourlyCoefficients;
}): number {
  const sky = SIGMA_HOUR[hour.coefficients ?? "fao56"] * (hour.tempC + 273.16) ** 4;
  return sky * humidityTerm(hour.vapourPressureKPa) * cloudTerm(hour.cloudRatioFrac);
}

function humidityTerm(vapourPressureKPa: number): number {
  return 0.34 - 0.14 * Math.sqrt(vapourPressureKPa);
}

function cloudTerm(cloudRatioFrac: number): number {
  return 1.35 * limitedCloudRatioFrac(cloudRatioFrac) - 0.35;
}
