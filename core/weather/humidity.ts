/** Saturation vapour pressure over water at an air temperature, kPa. [FAO56 eq. 11] */
export function saturationVapourPressureKPa(tempC: number): number {
  return 0.6108 * Math.exp((17.27 * tempC) / (tempC + 237.3));
}

/** Slope of the saturation curve at an air temperature, kPa/°C. [FAO56 eq. 13] */
export function saturationSlopeKPaPerC(tempC: number): number {
  return (4098 * saturationVapourPressureKPa(tempC)) / (tempC + 237.3) ** 2;
}

/** Temperature at which air of that vapour pressure is saturated, °C: eq. 14 turned round. [FAO56 eq. 14] */
export function dewPointC(vapourPressureKPa: number): number {
  if (!(vapourPressureKPa > 0))
    throw new RangeError(`vapour pressure ${vapourPressureKPa} kPa is not above 0`);
  const log = Math.log(vapourPressureKPa / 0.6108);
  return (237.3 * log) / (17.27 - log);
}

/** Relative humidity, 0 to 1, not limited above. [FAO56 eq. 10] */
export function relativeHumidityFrac(air: { tempC: number; dewPointC: number }): number {
  return saturationVapourPressureKPa(air.dewPointC) / saturationVapourPressureKPa(air.tempC);
}
