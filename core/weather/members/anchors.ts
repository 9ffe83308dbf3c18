import type { LocalDay } from "../../site/local-days.ts";
import type { Site } from "../../site/site.ts";
import { sunTimes } from "../../site/sun-times.ts";
import { HOUR_MS } from "../weather.ts";

/** Points of an hour axis between which daily figures are drawn out on straight lines. Rising, may lie off the axis. */
export interface Anchors {
  readonly atHour: readonly number[];
  /** By hour: the anchor at or before its middle, and the weight of the one after; held at both ends. */
  readonly below: Int32Array;
  readonly aboveFrac: Float64Array;
}

interface Axis {
  readonly startUtcMs: number;
  readonly hourCount: number;
}

/** Clock hours of coldest and warmest air where the sun does not rise and set. Chosen by us. */
const COLDEST_CLOCK_HOUR = 5;

/** Warmest air after solar noon, hours. [PARTON1981: 1.86 h] */
const WARMEST_AFTER_NOON_HOURS = 1.86;

/** Two anchors a day: the coldest air at sunrise (even index), the warmest after noon (odd index). */
export function temperatureAnchors(axis: Axis, days: readonly LocalDay[], site: Site): Anchors {
  const atHour = days.flatMap(({ day }) => {
    const times = sunTimes(day, site);
    const warmest = times.noonUtcMs + WARMEST_AFTER_NOON_HOURS * HOUR_MS;
    const coldest =
      "riseUtcMs" in times ? times.riseUtcMs : times.noonUtcMs - (12 - COLDEST_CLOCK_HOUR) * HOUR_MS;
    return [(coldest - axis.startUtcMs) / HOUR_MS, (warmest - axis.startUtcMs) / HOUR_MS];
  });
  return anchorsAt(axis.hourCount, atHour);
}

/** One anchor a day, at solar noon. */
export function noonAnchors(axis: Axis, days: readonly LocalDay[], site: Site): Anchors {
  const atHour = days.map(({ day }) => (sunTimes(day, site).noonUtcMs - axis.startUtcMs) / HOUR_MS);
  return anchorsAt(axis.hourCount, atHour);
}

function anchorsAt(hourCount: number, atHour: readonly number[]): Anchors {
  const below = new Int32Array(hourCount);
  const aboveFrac = new Float64Array(hourCount);
  const last = Math.max(0, atHour.length - 2);
  let k = 0;
  for (let hour = 0; hour < hourCount; hour++) {
    const middle = hour + 0.5;
    while (k < last && atHour[k + 1]! <= middle) k++;
    const span = (atHour[k + 1] ?? Number.POSITIVE_INFINITY) - atHour[k]!;
    below[hour] = k;
    aboveFrac[hour] = Math.min(1, Math.max(0, (middle - atHour[k]!) / span));
  }
  return { atHour, below, aboveFrac };
}

/**
 * Adds daily figures, drawn out between their anchors, to an hour-major column.
 * @param column index = hour * count + member; changed
 * @param atAnchor index = anchor * count + member
 */
export function addBetweenAnchors(column: Float64Array, anchors: Anchors, atAnchor: Float64Array): void {
  const count = column.length / anchors.below.length;
  const last = anchors.atHour.length - 1;
  for (let hour = 0; hour < anchors.below.length; hour++) {
    const above = anchors.aboveFrac[hour]!;
    const from = anchors.below[hour]! * count;
    const to = Math.min(last, anchors.below[hour]! + 1) * count;
    for (let m = 0; m < count; m++) {
      column[hour * count + m]! += (1 - above) * atAnchor[from + m]! + above * atAnchor[to + m]!;
    }
  }
}
