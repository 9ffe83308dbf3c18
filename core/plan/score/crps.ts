/** Values that were told as possible, each with its share; evenly likely when no shares are given. */
export interface ToldAmounts {
  readonly values: readonly number[];
  readonly weightFrac?: readonly number[];
}

/**
 * Continuous ranked probability score of a sample against what came, in the unit of the values: the mean distance from
 * what came less half the mean distance of the values from each other. 0 is perfect. [HERSBACH2000]
 */
export function crps({ values, weightFrac }: ToldAmounts, came: number): number {
  const weights = weightFrac ?? values.map(() => 1 / values.length);
  let sum = 0;
  for (const [i, value] of values.entries()) {
    sum += weights[i]! * Math.abs(value - came);
    for (const [j, other] of values.entries())
      sum -= (weights[i]! * weights[j]! * Math.abs(value - other)) / 2;
  }
  return sum;
}
