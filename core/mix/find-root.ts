export interface RootSearch {
  /** Ends between which the function changes sign. */
  readonly low: number;
  readonly high: number;
  /** Near enough to zero. */
  readonly tolerance: number;
}

const MOST_STEPS = 100;

/**
 * Where a falling function crosses zero: false position with the Illinois halving, so that it never stalls at one end.
 * The nearer end when it does not cross.
 */
export function findRoot(falling: (x: number) => number, search: RootSearch): number {
  let { low, high } = search;
  let atLow = falling(low);
  let atHigh = falling(high);
  if (atLow <= 0) return low;
  if (atHigh >= 0) return high;
  for (let step = 0; step < MOST_STEPS; step++) {
    const middle = (low * atHigh - high * atLow) / (atHigh - atLow);
    const value = falling(middle);
    if (Math.abs(value) <= search.tolerance || middle === low || middle === high) return middle;
    if (value > 0) {
      low = middle;
      atLow = value;
      atHigh /= 2;
    } else {
      high = middle;
      atHigh = value;
      atLow /= 2;
    }
  }
  return (low + high) / 2;
}
