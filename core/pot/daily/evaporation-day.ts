/** One day of the layer that evaporates, by the dual coefficient method. Depths in mm. */
export interface EvaporationDay {
  readonly et0Mm: number;
  readonly basalCoefficient: number;
  /** Most that the coefficient can be. [FAO56 eq. 72] */
  readonly mostCoefficient: number;
  /** Share of the ground that is both wetted and bare. [FAO56 eq. 75] */
  readonly wetBareFrac: number;
  /** Rain less run-off, plus irrigation over the wetted share. */
  readonly wettingMm: number;
  readonly depletionBeforeMm: number;
  /** Most that can evaporate, and how much of it evaporates freely. [FAO56 eq. 73, table 19] */
  readonly evaporableMm: number;
  readonly freelyEvaporableMm: number;
}

/**
 * Evaporation of a day by FAO-56's dual coefficients: a second opinion on the hourly balance, which follows another
 * drying law. Order: wet and drain, then evaporate. [FAO56 eq. 71, 74, 77, 79]
 */
export function evaporationDay(day: EvaporationDay): {
  depletionAtStartMm: number;
  drainedMm: number;
  reduction: number;
  coefficient: number;
  evaporatedMm: number;
  depletionAtEndMm: number;
  usedMm: number;
} {
  const { et0Mm, wettingMm, depletionBeforeMm, wetBareFrac, mostCoefficient, basalCoefficient } = day;
  const depletionAtStartMm = Math.max(0, depletionBeforeMm - wettingMm);
  const drainedMm = Math.max(0, wettingMm - depletionBeforeMm);
  const reduction = dryingReduction(depletionAtStartMm, day);
  const coefficient = Math.min(
    reduction * (mostCoefficient - basalCoefficient),
    wetBareFrac * mostCoefficient,
  );
  const evaporatedMm = coefficient * et0Mm;
  return {
    depletionAtStartMm,
    drainedMm,
    reduction,
    coefficient,
    evaporatedMm,
    depletionAtEndMm: Math.min(day.evaporableMm, depletionAtStartMm + evaporatedMm / wetBareFrac),
    usedMm: evaporatedMm + basalCoefficient * et0Mm,
  };
}

/** Share of free evaporation that a dried surface still gives. [FAO56 eq. 74] */
export function dryingReduction(
  depletionMm: number,
  surface: { evaporableMm: number; freelyEvaporableMm: number },
): number {
  const { evaporableMm, freelyEvaporableMm } = surface;
  if (depletionMm <= freelyEvaporableMm) return 1;
  return Math.max(0, (evaporableMm - depletionMm) / (evaporableMm - freelyEvaporableMm));
}
