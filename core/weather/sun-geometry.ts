const YEAR_RAD = (2 * Math.PI) / 365;

/** Angle in radians; latitude is negative in the south. [FAO56 eq. 22] */
export function radFromDeg(deg: number): number {
  return (Math.PI / 180) * deg;
}

/** Inverse relative distance from the earth to the sun. [FAO56 eq. 23] */
export function inverseDistance(dayOfYear: number): number {
  return 1 + 0.033 * Math.cos(YEAR_RAD * dayOfYear);
}

/** Declination of the sun, rad. [FAO56 eq. 24] */
export function declinationRad(dayOfYear: number): number {
  return 0.409 * Math.sin(YEAR_RAD * dayOfYear - 1.39);
}

/**
 * Hour angle of sunset, rad: 0 in polar night, pi in polar day. [FAO56 eq. 25]
 * Differs from source: limited where the sun does not cross the horizon, for which the paper gives no rule.
 */
export function sunsetAngleRad(place: { latDeg: number; dayOfYear: number }): number {
  const cosine = -Math.tan(radFromDeg(place.latDeg)) * Math.tan(declinationRad(place.dayOfYear));
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/** Hours from sunrise to sunset, without refraction, 0 to 24. [FAO56 eq. 34] */
export function daylightHours(place: { latDeg: number; dayOfYear: number }): number {
  return (24 / Math.PI) * sunsetAngleRad(place);
}

/** Solar time less mean solar time, hours. [FAO56 eq. 32 and 33] */
export function seasonalCorrectionHours(dayOfYear: number): number {
  const b = (2 * Math.PI * (dayOfYear - 81)) / 364;
  return 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b);
}
