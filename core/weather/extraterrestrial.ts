import {
  declinationRad,
  inverseDistance,
  radFromDeg,
  seasonalCorrectionHours,
  sunsetAngleRad,
} from "./sun-geometry.ts";

/** Solar constant, MJ/m2/min. [FAO56 eq. 21] */
const SOLAR_CONSTANT = 0.082;

/** Sun on a level surface above the air in a day, MJ/m2; 0 in polar night. [FAO56 eq. 21] */
export function extraterrestrialDayMjPerM2(place: { latDeg: number; dayOfYear: number }): number {
  const sunset = sunsetAngleRad(place);
  return betweenAngles({ ...place, fromRad: -sunset, toRad: sunset });
}

/**
 * The same in one hour, clipped at sunrise and sunset. [FAO56 eq. 28 to 33]
 * Differs from source: longitude counts east and the clock is UTC; the hour is also cut where the sun's lowest
 * point falls into it at high latitudes, so that the hours of a day add up to the day.
 * @param place.hourStartUtc 0 to 24, may be fractional
 */
export function extraterrestrialHourMjPerM2(place: {
  latDeg: number;
  lonDeg: number;
  dayOfYear: number;
  hourStartUtc: number;
}): number {
  // Written out, not spread: a spread object is made anew for every hour.
  const { latDeg, lonDeg, dayOfYear } = place;
  const sunset = sunsetAngleRad(place);
  const middle = hourAngleRad({ lonDeg, dayOfYear, utcHour: place.hourStartUtc + 0.5 });
  let total = 0;
  for (const turn of [-2 * Math.PI, 0, 2 * Math.PI]) {
    const fromRad = Math.max(middle - Math.PI / 24 + turn, -sunset);
    const toRad = Math.min(middle + Math.PI / 24 + turn, sunset);
    if (toRad > fromRad) total += betweenAngles({ latDeg, dayOfYear, fromRad, toRad });
  }
  return total;
}

/** Hour angle of the sun, -pi to pi, 0 at solar noon. [FAO56 eq. 31] */
export function hourAngleRad(place: { lonDeg: number; dayOfYear: number; utcHour: number }): number {
  const solarHour = place.utcHour + place.lonDeg / 15 + seasonalCorrectionHours(place.dayOfYear);
  const angle = (Math.PI / 12) * (solarHour - 12);
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}

/** Sine of the sun's height above the horizon, negative below. */
export function sineOfSunHeight(place: { latDeg: number; dayOfYear: number; hourAngleRad: number }): number {
  const latRad = radFromDeg(place.latDeg);
  const decl = declinationRad(place.dayOfYear);
  return Math.sin(latRad) * Math.sin(decl) + Math.cos(latRad) * Math.cos(decl) * Math.cos(place.hourAngleRad);
}

/** [FAO56 eq. 28], of which eq. 21 is the case from sunrise to sunset. */
function betweenAngles(span: { latDeg: number; dayOfYear: number; fromRad: number; toRad: number }): number {
  const latRad = radFromDeg(span.latDeg);
  const decl = declinationRad(span.dayOfYear);
  const level = (span.toRad - span.fromRad) * Math.sin(latRad) * Math.sin(decl);
  const turning = Math.cos(latRad) * Math.cos(decl) * (Math.sin(span.toRad) - Math.sin(span.fromRad));
  const perRadian = ((12 * 60) / Math.PI) * SOLAR_CONSTANT * inverseDistance(span.dayOfYear);
  return Math.max(0, perRadian * (level + turning));
}
