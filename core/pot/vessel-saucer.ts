import type { Vessel } from "./vessel.ts";
import { areaCm2At } from "./vessel-shape.ts";

/** Least inner width of a saucer against the pot's base. Chosen by us. */
const LEAST_SAUCER_WIDTH = 1.2;

/**
 * Water that stands around the base when the saucer is full, mL. Saucers are as wide as the rim of the pot that they
 * are made for; one that is hardly wider than the base still leaves a ring.
 */
export function saucerMl(vessel: Vessel): number {
  const saucerCm = vessel.saucerCm ?? 0;
  const baseCm2 = areaCm2At(vessel, 0);
  const saucerCm2 = Math.max(areaCm2At(vessel, vessel.heightCm), baseCm2 * LEAST_SAUCER_WIDTH ** 2);
  return saucerCm * (saucerCm2 - baseCm2);
}
