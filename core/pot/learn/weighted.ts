/** Mean by weight; the weights sum to 1. */
export function weightedMean(column: Float64Array, weightFrac: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < column.length; k++) sum += weightFrac[k]! * column[k]!;
  return sum;
}

/** Covariance by weight. */
export function weightedCovariance(a: Float64Array, b: Float64Array, weightFrac: Float64Array): number {
  const meanA = weightedMean(a, weightFrac);
  const meanB = weightedMean(b, weightFrac);
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += weightFrac[k]! * (a[k]! - meanA) * (b[k]! - meanB);
  return sum;
}
