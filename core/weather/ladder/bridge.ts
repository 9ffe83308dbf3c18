/**
 * A copy of a column in which short holes between two known hours are filled on a straight line. Longer holes, and
 * holes at either end, stay unknown.
 */
export function bridgeShortGaps(column: Float64Array, mostHours: number): Float64Array {
  const filled = Float64Array.from(column);
  let lastKnown = -1;
  for (let hour = 0; hour < column.length; hour++) {
    if (Number.isNaN(column[hour]!)) continue;
    const gap = hour - lastKnown - 1;
    if (lastKnown >= 0 && gap > 0 && gap <= mostHours) {
      const step = (column[hour]! - column[lastKnown]!) / (gap + 1);
      for (let k = 1; k <= gap; k++) filled[lastKnown + k] = column[lastKnown]! + k * step;
    }
    lastKnown = hour;
  }
  return filled;
}
