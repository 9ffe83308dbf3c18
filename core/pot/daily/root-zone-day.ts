/** What roots can use, mm, and how much of it without want. [FAO56 eq. 82, 83] */
export interface RootZone {
  readonly usableMm: number;
  readonly readilyUsableMm: number;
}

/** The root zone of a soil. [FAO56 eq. 82, 83] */
export function rootZoneOf(soil: {
  fieldCapacityFrac: number;
  wiltingFrac: number;
  depthM: number;
  depletionFrac: number;
}): RootZone {
  const usableMm = 1000 * (soil.fieldCapacityFrac - soil.wiltingFrac) * soil.depthM;
  return { usableMm, readilyUsableMm: soil.depletionFrac * usableMm };
}

/** Share of its demand that a plant still gets from a depleted root zone. [FAO56 eq. 84] */
export function stressCoefficient(depletionMm: number, zone: RootZone): number {
  const { usableMm, readilyUsableMm } = zone;
  if (depletionMm <= readilyUsableMm) return 1;
  return Math.max(0, (usableMm - depletionMm) / (usableMm - readilyUsableMm));
}

/**
 * A day of the root zone in the order in which the hourly balance works: water in, drain, then use. [FAO56 eq. 84-88]
 *
 * Differs from source: equation 88 as printed takes the day's use off before draining; the worked table drains first.
 */
export function rootZoneDay(day: {
  zone: RootZone;
  depletionBeforeMm: number;
  waterMm: number;
  demandMm: number;
}): {
  depletionAtStartMm: number;
  drainedMm: number;
  stress: number;
  usedMm: number;
  depletionAtEndMm: number;
} {
  const depletionAtStartMm = Math.max(0, day.depletionBeforeMm - day.waterMm);
  const drainedMm = Math.max(0, day.waterMm - day.depletionBeforeMm);
  const stress = stressCoefficient(depletionAtStartMm, day.zone);
  const usedMm = stress * day.demandMm;
  return { depletionAtStartMm, drainedMm, stress, usedMm, depletionAtEndMm: depletionAtStartMm + usedMm };
}
