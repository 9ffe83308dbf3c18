import type { HourlyAnswer } from "./answer-schema.ts";

const ISO_LOCAL = /^\d{4}-\d\d-\d\dT\d\d:\d\d$/;
const HOUR_S = 3600;

/**
 * Instants of the rows, epoch ms; NaN where a stamp is not one.
 *
 * One fixed offset holds for the whole answer, also across a clock change, so the zone's own rules are not asked. In
 * zones off the whole hour the feed reads its data with the offset cut to whole hours but labels the rows with the
 * true one; the cut offset is therefore the one that leads back to the data.
 */
export function rowInstants(answer: HourlyAnswer): Float64Array {
  const offsetS = answer.utc_offset_seconds;
  const cutOffsetS = Math.trunc(offsetS / HOUR_S) * HOUR_S;
  return Float64Array.from(answer.hourly.time as readonly (string | number)[], (stamp) =>
    typeof stamp === "number"
      ? (stamp + offsetS - cutOffsetS) * 1000
      : ISO_LOCAL.test(stamp)
        ? Date.parse(`${stamp}:00Z`) - cutOffsetS * 1000
        : Number.NaN,
  );
}
