import { dewPointC, saturationVapourPressureKPa } from "./humidity.ts";

/** Dew point from air temperature and relative humidity, °C; NaN where either is unknown or the air bone dry. [FAO56 eq. 10, 14] */
export function dewPointFromHumidityC(tempC: number, humidityFrac: number): number {
  return dewPointOrUnknownC(humidityFrac * saturationVapourPressureKPa(tempC));
}

/** Dew point from air temperature and vapour pressure deficit, °C; NaN where either is unknown. [FAO56 eq. 11, 14] */
export function dewPointFromDeficitC(tempC: number, vpdKPa: number): number {
  return dewPointOrUnknownC(saturationVapourPressureKPa(tempC) - vpdKPa);
}

function dewPointOrUnknownC(vapourKPa: number): number {
  return vapourKPa > 0 ? dewPointC(vapourKPa) : Number.NaN;
}
