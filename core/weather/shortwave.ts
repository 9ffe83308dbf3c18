/** Grass albedo. [FAO56 eq. 38] */
const ALBEDO_FRAC = 0.23;

/** Sun under a clear sky, MJ/m2 in the span that Ra is for. [FAO56 eq. 37] */
export function clearSkyMjPerM2(sky: { extraterrestrialMjPerM2: number; elevationM: number }): number {
  return (0.75 + 2e-5 * sky.elevationM) * sky.extraterrestrialMjPerM2;
}

/** Sun from the share of possible sunshine (Angstrom), MJ/m2 in the span that Ra is for. [FAO56 eq. 35] */
export function shortwaveFromSunshine(sky: {
  extraterrestrialMjPerM2: number;
  sunshineFrac: number;
}): number {
  return (0.25 + 0.5 * sky.sunshineFrac) * sky.extraterrestrialMjPerM2;
}

/**
 * Sun of a day from its temperature range, MJ/m2, not above clear sky. [FAO56 eq. 50]
 * @param day.coastal 0.19 by the sea, else 0.16
 */
export function shortwaveFromRange(day: {
  extraterrestrialMjPerM2: number;
  elevationM: number;
  tempMinC: number;
  tempMaxC: number;
  coastal: boolean;
}): number {
  const range = Math.max(0, day.tempMaxC - day.tempMinC);
  const sun = (day.coastal ? 0.19 : 0.16) * Math.sqrt(range) * day.extraterrestrialMjPerM2;
  return Math.min(sun, clearSkyMjPerM2(day));
}

/** Sun kept by grass, MJ/m2. [FAO56 eq. 38] */
export function netShortwaveMjPerM2(radiationMjPerM2: number): number {
  return (1 - ALBEDO_FRAC) * radiationMjPerM2;
}
