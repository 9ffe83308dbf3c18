import type { Porosity } from "./porosity-test.ts";

/**
 * Pores and air from two densities alone, for a grower who can weigh but not soak: a regression over 238 growing media.
 * Not for grains with closed pores; a measured mix differs by 0 to 11 points. [WALLER1991]
 *
 * @param dryKgPerL  oven-dry or air-dry mix; up to some 0.6
 * @param drainedKgPerL  the same volume after soaking and draining
 */
export function porosityByDensity(of: { dryKgPerL: number; drainedKgPerL: number }): Porosity {
  const dryGPerL = of.dryKgPerL * 1000;
  const totalPorosityFrac = (96.72 - 0.038 * dryGPerL) / 100;
  const airSpaceFrac = (96.72 + 0.062 * dryGPerL - 100 * of.drainedKgPerL) / 100;
  return { totalPorosityFrac, airSpaceFrac, capacityFrac: totalPorosityFrac - airSpaceFrac };
}
