/*
 * Columns by stamp to columns by hour: n stamps bound n - 1 hours, and hour i runs from stamp i to stamp i + 1.
 */

/** Instants: the mean of both ends; unknown when either end is. */
export function meanOfEnds(byStamp: Float64Array): Float64Array {
  return fromEnds(byStamp, (begin, end) => (begin + end) / 2);
}

/** Codes and gusts told at instants: the larger of both ends, or the one that is known. */
export function largerOfEnds(byStamp: Float64Array): Float64Array {
  return fromEnds(byStamp, (begin, end) =>
    Number.isNaN(begin) ? end : Number.isNaN(end) ? begin : Math.max(begin, end),
  );
}

/** Sums, means and maxima that the feed stamps with the end of their hour. */
export function stampedAtEnd(byStamp: Float64Array): Float64Array {
  return byStamp.slice(1);
}

function fromEnds(byStamp: Float64Array, hour: (begin: number, end: number) => number): Float64Array {
  const byHour = new Float64Array(byStamp.length - 1);
  for (let i = 0; i < byHour.length; i += 1) byHour[i] = hour(byStamp[i]!, byStamp[i + 1]!);
  return byHour;
}
