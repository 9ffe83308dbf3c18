import { saturationVapourPressureKPa } from "./humidity.ts";

interface DayRange {
  readonly tempMinC: number;
  readonly tempMaxC: number;
}

/** Saturation vapour pressure of a day, kPa: mean of both extremes, not the value at the mean. [FAO56 eq. 12] */
export function daySaturationKPa(day: DayRange): number {
  return (saturationVapourPressureKPa(day.tempMaxC) + saturationVapourPressureKPa(day.tempMinC)) / 2;
}

/** Vapour pressure from the day's highest and lowest relative humidity, kPa. [FAO56 eq. 17] */
export function vapourPressureFromPairKPa(day: DayRange & { rhMaxFrac: number; rhMinFrac: number }): number {
  const atNight = saturationVapourPressureKPa(day.tempMinC) * day.rhMaxFrac;
  const atNoon = saturationVapourPressureKPa(day.tempMaxC) * day.rhMinFrac;
  return (atNight + atNoon) / 2;
}

/** Vapour pressure from the highest relative humidity alone, kPa. [FAO56 eq. 18] */
export function vapourPressureFromMaxKPa(day: DayRange & { rhMaxFrac: number }): number {
  return saturationVapourPressureKPa(day.tempMinC) * day.rhMaxFrac;
}

/** Vapour pressure from the day's mean relative humidity, kPa; the least certain of the three. [FAO56 eq. 19] */
export function vapourPressureFromMeanKPa(day: DayRange & { rhMeanFrac: number }): number {
  return day.rhMeanFrac * daySaturationKPa(day);
}

/**
 * Vapour pressure from dry and wet bulb, kPa. [FAO56 eq. 15 and 16]
 * @param air.ventilation coefficient a_psy of the instrument, 1/°C: 0.000662 ventilated (about 5 m/s), 0.000800
 * natural (about 1 m/s), 0.001200 indoors
 */
export function vapourPressureFromWetBulbKPa(air: {
  dryC: number;
  wetC: number;
  pressureKPa: number;
  ventilation: number;
}): number {
  const psychrometric = air.ventilation * air.pressureKPa;
  return saturationVapourPressureKPa(air.wetC) - psychrometric * (air.dryC - air.wetC);
}
