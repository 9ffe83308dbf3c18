import { mlFromMm } from "../water-units.ts";

/**
 * Constants of the cover law, from three of the four measured losses under coarse sand and the assumption that the
 * part that grows with demand goes with the square root of the thickness; the fourth is then foretold. [MODAIHSH1985]
 */
const BASE_PER_CM = 1.727;
const BASE_POWER = 1.2;
const PER_MM_PER_DAY_AT_1_CM = 0.403;

/**
 * Demand under loose coarse stone, as the tank needs it: demand e becomes e / (coverBase + coverPerMl e). The
 * surface beneath dries through the stone's air, so thicker stone lets through less and a greater demand gains less.
 */
export function coverOf(
  topDressingCm: number,
  surfaceAreaCm2: number,
): { coverBase: number; coverPerMl: number } {
  if (topDressingCm <= 0) return { coverBase: 1, coverPerMl: 0 };
  const perDay = PER_MM_PER_DAY_AT_1_CM * Math.sqrt(topDressingCm);
  return {
    coverBase: Math.max(1.0001, BASE_PER_CM * topDressingCm ** BASE_POWER),
    coverPerMl: (24 * perDay) / mlFromMm(1, surfaceAreaCm2),
  };
}
