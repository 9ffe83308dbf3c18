/** Shares told and how often they came true, by tenths. */
export interface Reliability {
  readonly counts: number[];
  readonly toldSums: number[];
  readonly cameTrue: number[];
  /** Sum of (told - outcome) squared: over the count it is the Brier score. */
  brierSum: number;
}

const BINS = 10;

export function emptyReliability(): Reliability {
  const bins = () => new Array<number>(BINS).fill(0);
  return { counts: bins(), toldSums: bins(), cameTrue: bins(), brierSum: 0 };
}

/** Adds one share that was told and whether it came true. */
export function addOutcome(to: Reliability, told: number, cameTrue: boolean): void {
  const bin = Math.min(BINS - 1, Math.floor(told * BINS));
  to.counts[bin]!++;
  to.toldSums[bin]! += told;
  if (cameTrue) to.cameTrue[bin]!++;
  to.brierSum += (told - (cameTrue ? 1 : 0)) ** 2;
}

/** One sum of several. */
export function joinedReliability(parts: readonly Reliability[]): Reliability {
  const sum = emptyReliability();
  for (const part of parts) {
    for (let bin = 0; bin < BINS; bin++) {
      sum.counts[bin]! += part.counts[bin]!;
      sum.toldSums[bin]! += part.toldSums[bin]!;
      sum.cameTrue[bin]! += part.cameTrue[bin]!;
    }
    sum.brierSum += part.brierSum;
  }
  return sum;
}

/** Brier score, and that of always telling the overall frequency; null without outcomes. */
export function brierOf({
  counts,
  cameTrue,
  brierSum,
}: Reliability): { score: number; ofClimate: number } | null {
  const count = counts.reduce((a, b) => a + b, 0);
  if (count === 0) return null;
  const base = cameTrue.reduce((a, b) => a + b, 0) / count;
  return { score: brierSum / count, ofClimate: base * (1 - base) };
}
