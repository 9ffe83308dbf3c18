/** Saturation vapour pressure over water from air temperature, kPa. [FAO56 eq. 11] */
function saturationKPa(tempC: number): number {
  return 0.6108 * Math.exp((17.27 * tempC) / (tempC + 237.3));
}

/** Dew point at which the air would hold `vapourKPa` at most, °C: [FAO56 eq. 14] solved for temperature. */
function dewPointAtC(vapourKPa: number): number {
  if (!(vapourKPa > 0)) return Number.NaN;
  const logRatio = Math.log(vapourKPa / 0.6108);
  return (237.3 * logRatio) / (17.27 - logRatio);
}

/** Dew point from air temperature and relative humidity, °C; NaN where either is unknown or humidity is zero. */
export function dewPointFromHumidityC(tempC: number, humidityFrac: number): number {
  return dewPointAtC(humidityFrac * saturationKPa(tempC));
}

/** Dew point from air temperature and vapour pressure deficit, °C; NaN where either is unknown. */
export function dewPointFromDeficitC(tempC: number, vpdKPa: number): number {
  return dewPointAtC(saturationKPa(tempC) - vpdKPa);
}
