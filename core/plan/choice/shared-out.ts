/** A total shared out by weights; by even shares when no day has a weight. */
export function sharedOut(total: number, weights: Float64Array): Float64Array {
  let sum = 0;
  for (const weight of weights) sum += weight;
  return weights.map((weight) => (sum > 0 ? (total * weight) / sum : total / weights.length));
}
