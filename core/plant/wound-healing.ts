/** Warmer than this no faster rate was measured. */
const FULL_RATE_C = 20;
/** Cooler than this nothing was measured; the cut is taken to stand still near freezing. */
const STANDSTILL_C = 0;

/**
 * How fast a cut closes at a temperature, against 20 °C: three times slower at 10 °C, three times slower again at
 * 5 °C, no faster above 20 °C. Measured on potato tubers, taken over for roots and stems as the nearest that has
 * been measured. [WIGGINTON1974]
 *
 * @param tempC  temperature of the wounded part, °C
 * @returns rate, 0 to 1
 */
export function woundHealingRate(tempC: number): number {
  if (tempC >= FULL_RATE_C) return 1;
  if (tempC >= 10) return 3 ** ((tempC - FULL_RATE_C) / 10);
  if (tempC >= 5) return 3 ** ((tempC - 10) / 5 - 1);
  if (tempC <= STANDSTILL_C) return 0;
  return (tempC - STANDSTILL_C) / 5 / 9;
}
