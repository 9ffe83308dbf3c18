/**
 * Water of a depth over an area: 1 mm on 1 cm2 is 0.1 mL. The only place where the two units meet.
 *
 * @param depthMm  depth of water, mm
 * @param areaCm2  area it lies on, cm2 (the product does not mind the order)
 * @returns volume, mL
 */
export function mlFromMm(depthMm: number, areaCm2: number): number {
  return depthMm * areaCm2 * 0.1;
}

/** Depth in mm of a volume of water spread over an area. */
export function mmFromMl({ waterMl, areaCm2 }: { waterMl: number; areaCm2: number }): number {
  return waterMl / mlFromMm(1, areaCm2);
}
