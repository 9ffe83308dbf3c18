import type { Spread } from "../../weather/spread.ts";
import { roundTo } from "./round-to.ts";

/** A sample whose values are as likely as their weights: strided, so that a column is read where it lies. */
export interface Sample {
  readonly values: ArrayLike<number>;
  readonly offset?: number;
  readonly weightFrac: ArrayLike<number>;
}

/** Tenth, fiftieth and ninetieth percentile of a weighted sample, each rounded to a multiple of `step`. */
export function spreadOf(sample: Sample, step: number): Spread {
  const [low, mid, high] = quantilesOf(sample, [0.1, 0.5, 0.9]);
  return { low: roundTo(low!, step), mid: roundTo(mid!, step), high: roundTo(high!, step) };
}

/**
 * Quantiles of a weighted sample: the smallest value at or below which the share of weight lies.
 * @param shares rising, 0 to 1
 */
export function quantilesOf(sample: Sample, shares: readonly number[]): number[] {
  const { values, offset = 0, weightFrac } = sample;
  if (areEven(weightFrac)) return evenQuantiles(sample, shares);
  const order = orderOf(sample);
  const found: number[] = [];
  let reached = 0;
  for (const i of order) {
    reached += weightFrac[i]!;
    while (found.length < shares.length && reached >= shares[found.length]! - 1e-9) {
      found.push(values[offset + i]!);
    }
  }
  const last = values[offset + order[order.length - 1]!]!;
  while (found.length < shares.length) found.push(last);
  return found;
}

/** Places of the values, smallest first. Put in one by one: for some fifty that is quicker than any sort by a function. */
function orderOf({ values, offset = 0, weightFrac }: Sample): Uint32Array {
  const order = new Uint32Array(weightFrac.length);
  for (let i = 0; i < order.length; i++) {
    const value = values[offset + i]!;
    let at = i;
    for (; at > 0 && values[offset + order[at - 1]!]! > value; at--) order[at] = order[at - 1]!;
    order[at] = i;
  }
  return order;
}

/** The same for values that are as likely as each other, without carrying weights through the sorting. */
function evenQuantiles({ values, offset = 0, weightFrac }: Sample, shares: readonly number[]): number[] {
  const count = weightFrac.length;
  const sorted = new Float64Array(count);
  for (let i = 0; i < count; i++) sorted[i] = values[offset + i]!;
  sorted.sort();
  return shares.map(
    (share) => sorted[Math.min(count - 1, Math.max(0, Math.ceil(share * count - 1e-6) - 1))]!,
  );
}

function areEven(weightFrac: ArrayLike<number>): boolean {
  for (let i = 1; i < weightFrac.length; i++) if (weightFrac[i] !== weightFrac[0]) return false;
  return true;
}

/** Expected value of a weighted sample. */
export function meanOf({ values, offset = 0, weightFrac }: Sample): number {
  let sum = 0;
  for (let i = 0; i < weightFrac.length; i++) sum += weightFrac[i]! * values[offset + i]!;
  return sum;
}

/** Share of the weight whose value passes a test. */
export function shareWhere(sample: Sample, passes: (value: number) => boolean): number {
  const { values, offset = 0, weightFrac } = sample;
  let share = 0;
  for (let i = 0; i < weightFrac.length; i++) if (passes(values[offset + i]!)) share += weightFrac[i]!;
  return share;
}
