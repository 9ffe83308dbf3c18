const BY_SIZE = new Map<number, readonly Float64Array[]>();

/**
 * Columns to reckon in, the same ones at each call for a size: what was in them is gone when the next term is reckoned.
 * A new block of memory costs more than the sum that is done in it.
 */
export function workColumns(size: number): readonly Float64Array[] {
  const known = BY_SIZE.get(size);
  if (known !== undefined) return known;
  const made = Array.from({ length: 4 }, () => new Float64Array(size));
  BY_SIZE.set(size, made);
  return made;
}
