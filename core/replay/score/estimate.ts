/** A mean with its interval of 95 %; the half width is NaN when there are not two values. */
export interface Estimate {
  readonly mean: number;
  readonly halfWidth: number;
  readonly count: number;
}

/** Student's t at 97.5 % by degrees of freedom, 1 to 30. [tables; beyond 30 the normal value with its first correction] */
const T_975 = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131,
  2.12, 2.11, 2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
] as const;

/** Student's t that leaves 2.5 % above it. */
export function tQuantile975(freedom: number): number {
  if (freedom < 1) return Number.NaN;
  return T_975[freedom - 1] ?? 1.96 + 2.4 / freedom;
}

/** Mean of independent values with its interval. */
export function estimateOf(values: readonly number[]): Estimate {
  const count = values.length;
  const mean = values.reduce((a, b) => a + b, 0) / count;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const halfWidth =
    count < 2 ? Number.NaN : tQuantile975(count - 1) * Math.sqrt(square / (count - 1) / count);
  return { mean, halfWidth, count };
}

/** Values gathered by key, each key's mean: what shares a seed is one value, as it shares its chance. */
export function meansByKey<T>(
  items: readonly T[],
  of: { key(item: T): number; value(item: T): number },
): number[] {
  const sums = new Map<number, { sum: number; count: number }>();
  for (const item of items) {
    const key = of.key(item);
    const had = sums.get(key) ?? { sum: 0, count: 0 };
    sums.set(key, { sum: had.sum + of.value(item), count: had.count + 1 });
  }
  return [...sums.values()].map(({ sum, count }) => sum / count);
}
