import { HOUR_MS } from "../../core/weather/weather.ts";

/** An unbroken run of whole hours, with the place on it of every row of an answer. */
export interface HourAxis {
  readonly firstUtcMs: number;
  readonly stampCount: number;
  /** By row of the answer: index of its stamp on the axis, or -1 for a row that repeats a stamp. */
  readonly placeOfRow: Int32Array;
  readonly twice: number;
  readonly missing: number;
}

/** Longer than any answer we ask for: 92 days back and 16 ahead, with room. */
const MOST_STAMPS = 24 * 120;

/**
 * The axis that holds all stamps, first to last, whatever their order. The first row of a repeated stamp counts.
 *
 * @returns null when there are fewer than two stamps, one is not a whole hour, or they lie too far apart
 */
export function hourAxis(stampsUtcMs: Float64Array): HourAxis | null {
  if (!stampsUtcMs.every((stamp) => Number.isInteger(stamp / HOUR_MS))) return null;
  const firstUtcMs = stampsUtcMs.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const lastUtcMs = stampsUtcMs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const stampCount = (lastUtcMs - firstUtcMs) / HOUR_MS + 1;
  if (!(stampCount >= 2 && stampCount <= MOST_STAMPS)) return null;
  const taken = new Uint8Array(stampCount);
  const placeOfRow = Int32Array.from(stampsUtcMs, (stamp) => {
    const place = (stamp - firstUtcMs) / HOUR_MS;
    if (taken[place]) return -1;
    taken[place] = 1;
    return place;
  });
  const held = taken.reduce((sum, one) => sum + one, 0);
  return { firstUtcMs, stampCount, placeOfRow, twice: stampsUtcMs.length - held, missing: stampCount - held };
}

/** A column by row laid on the axis; stamps without a row hold NaN. */
export function onAxis(axis: HourAxis, byRow: Float64Array): Float64Array {
  const byStamp = new Float64Array(axis.stampCount).fill(Number.NaN);
  for (let row = 0; row < byRow.length; row += 1) {
    const place = axis.placeOfRow[row]!;
    if (place >= 0) byStamp[place] = byRow[row]!;
  }
  return byStamp;
}
