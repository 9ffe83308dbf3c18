/** One radiation night: air and dew point two hours after sunset, and the minimum that followed, °C. */
export interface RadiationNight {
  readonly tempC: number;
  readonly dewPointC: number;
  readonly minC: number;
}

/** Minimum = tempFactor x temperature + dewFactor x dew point + offsetC. */
export interface RadiationNightFit {
  readonly tempFactor: number;
  readonly dewFactor: number;
  readonly offsetC: number;
}

/**
 * How a site cools on calm clear nights, from nights it has seen. [SNYDER2005 ch. 5, minimum temperature forecast]
 * Two straight lines, one after the other: minimum on temperature, then what is left on dew point. A joint fit gives
 * other figures; the source takes the two steps, and so do we.
 * @returns null for fewer than three nights or nights that are all alike
 */
export function fitRadiationNights(nights: readonly RadiationNight[]): RadiationNightFit | null {
  if (nights.length < 3) return null;
  const byTemp = straightLine(nights.map(({ tempC, minC }) => [tempC, minC]));
  if (!byTemp) return null;
  const left = nights.map(
    ({ tempC, dewPointC, minC }) => [dewPointC, minC - byTemp.slope * tempC - byTemp.at0] as const,
  );
  const byDew = straightLine(left);
  if (!byDew) return null;
  return { tempFactor: byTemp.slope, dewFactor: byDew.slope, offsetC: byTemp.at0 + byDew.at0 };
}

/** Minimum of a radiation night from the evening before it, °C. [SNYDER2005 ch. 5] */
export function radiationNightMinC(
  fit: RadiationNightFit,
  evening: { tempC: number; dewPointC: number },
): number {
  return fit.tempFactor * evening.tempC + fit.dewFactor * evening.dewPointC + fit.offsetC;
}

/** Least squares through pairs of x and y; null when all x are alike. */
function straightLine(pairs: readonly (readonly [number, number])[]): { slope: number; at0: number } | null {
  const meanX = pairs.reduce((sum, [x]) => sum + x, 0) / pairs.length;
  const meanY = pairs.reduce((sum, [, y]) => sum + y, 0) / pairs.length;
  const square = pairs.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  if (!(square > 0)) return null;
  const slope = pairs.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) / square;
  return { slope, at0: meanY - slope * meanX };
}
