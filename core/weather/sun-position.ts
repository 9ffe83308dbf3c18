import { radFromDeg } from "./sun-geometry.ts";

/** Where the sun stands, apart from the observer. */
export interface SunPosition {
  readonly declinationRad: number;
  /** Apparent solar time less mean solar time, hours. */
  readonly equationOfTimeHours: number;
}

const J2000_UTC_MS = Date.UTC(2000, 0, 1, 12);

/**
 * Sun's position at an instant, good to 0.01 degrees from 1950 to 2050. [ALMANAC: low-precision formulas for the sun;
 * coefficients from memory] The yearly formulas of FAO56 miss by up to half a degree and serve radiation only.
 */
export function sunPosition(utcMs: number): SunPosition {
  const days = (utcMs - J2000_UTC_MS) / 86_400_000;
  const meanLongDeg = 280.46 + 0.9856474 * days;
  const anomalyRad = radFromDeg(357.528 + 0.9856003 * days);
  const longRad = radFromDeg(meanLongDeg + 1.915 * Math.sin(anomalyRad) + 0.02 * Math.sin(2 * anomalyRad));
  const tiltRad = radFromDeg(23.439 - 0.0000004 * days);
  const rightAscensionRad = Math.atan2(Math.cos(tiltRad) * Math.sin(longRad), Math.cos(longRad));
  const aheadRad = radFromDeg(meanLongDeg) - rightAscensionRad;
  const wrapped = aheadRad - 2 * Math.PI * Math.round(aheadRad / (2 * Math.PI));
  return {
    declinationRad: Math.asin(Math.sin(tiltRad) * Math.sin(longRad)),
    equationOfTimeHours: (12 / Math.PI) * wrapped,
  };
}
