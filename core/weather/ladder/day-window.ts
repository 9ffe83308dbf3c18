/** Lowest and highest value in the 24 hours around an hour; near an end of the column, in the 24 hours next to it. */
export function rangeAround(column: Float64Array, hour: number): { least: number; most: number } {
  const from = Math.max(0, Math.min(hour - 12, column.length - 24));
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let at = from; at < Math.min(column.length, from + 24); at++) {
    const value = column[at]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return { least, most };
}
