/** Tenth, fiftieth and ninetieth percentile of the cloud. */
export interface Spread {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** Tenth, fiftieth and ninetieth percentile of equally likely values; their order is not changed. */
export function spreadOf(values: Float64Array): Spread {
  const sorted = Float64Array.from(values).sort();
  return { low: quantile(sorted, 0.1), mid: quantile(sorted, 0.5), high: quantile(sorted, 0.9) };
}

/** Quantile of ascending values, straight between neighbours. @throws RangeError when there are none */
export function quantile(sorted: Float64Array, shareFrac: number): number {
  if (sorted.length === 0) throw new RangeError("a quantile needs at least one value");
  const at = shareFrac * (sorted.length - 1);
  const below = Math.floor(at);
  const above = Math.min(sorted.length - 1, below + 1);
  return sorted[below]! + (at - below) * (sorted[above]! - sorted[below]!);
}
