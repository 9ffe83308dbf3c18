/** A share that was told and what came of it. */
export interface Told {
  readonly toldFrac: number;
  readonly cameTrue: boolean;
}

/** Score = reliability - resolution + uncertainty; the lower the better. */
export interface BrierParts {
  readonly score: number;
  /** How far what was told lies from how often it came true. */
  readonly reliability: number;
  /** How far different tellings go with different outcomes. */
  readonly resolution: number;
  /** What always telling the overall frequency would score. */
  readonly uncertainty: number;
}

/**
 * Brier score and its three parts, exact as tellings are grouped by their own value and not by bands; null without any.
 * [BRIER1950, MURPHY1973]
 */
export function brierParts(all: readonly Told[]): BrierParts | null {
  if (all.length === 0) return null;
  const overall = frequencyOf(all);
  let score = 0;
  let reliability = 0;
  let resolution = 0;
  for (const [toldFrac, group] of byValue(all)) {
    const cameTrueFrac = frequencyOf(group);
    const share = group.length / all.length;
    reliability += share * (toldFrac - cameTrueFrac) ** 2;
    resolution += share * (cameTrueFrac - overall) ** 2;
  }
  for (const { toldFrac, cameTrue } of all) score += (toldFrac - (cameTrue ? 1 : 0)) ** 2 / all.length;
  return { score, reliability, resolution, uncertainty: overall * (1 - overall) };
}

/** Share of what was told that came true. */
export function frequencyOf(all: readonly Told[]): number {
  return all.filter(({ cameTrue }) => cameTrue).length / all.length;
}

function byValue(all: readonly Told[]): Map<number, Told[]> {
  const groups = new Map<number, Told[]>();
  for (const one of all) {
    const group = groups.get(one.toldFrac);
    if (group === undefined) groups.set(one.toldFrac, [one]);
    else group.push(one);
  }
  return groups;
}
