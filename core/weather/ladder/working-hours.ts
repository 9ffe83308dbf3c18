import type { Site } from "../../site/site.ts";
import { type SunHours, sunHours } from "../../site/sun-hours.ts";
import { HOUR_MS, type HourColumns, type MemberColumns, type Weather } from "../weather.ts";
import { bridgeShortGaps } from "./bridge.ts";
import { mapHours } from "./reaching-now.ts";
import { Tally } from "./tally.ts";

/** A hole of one hour is bridged on a straight line; six-hourly values (holes of five) are joined up likewise. */
const MOST_BRIDGED_HOURS = 5;
const BRIDGED = { quantity: "temperature", method: "bridged", errorEstimate: 1 } as const;

/** Everything the rungs look at. */
export interface WorkingHours {
  readonly site: Site;
  readonly startUtcMs: number;
  readonly hourCount: number;
  /** Index of the hour that begins now. */
  readonly nowHour: number;
  /** Its own copies, which the rungs fill. */
  readonly columns: HourColumns;
  /** Mean over the ensemble where every member is known, else NaN. */
  readonly memberMean: Pick<HourColumns, MemberQuantity> | null;
  readonly sun: SunHours;
  readonly tally: Tally;
}

export type MemberQuantity = "tempC" | "dewPointC" | "rainMm" | "windMPerS" | "radiationMjPerM2";

/**
 * Copies of the weather's columns on an axis that reaches to `hourCount`, short holes bridged. A rain sum is bridged
 * over one hour only; radiation over none, because the ladder knows the sun's course and a straight line does not.
 */
export function workingHours(
  weather: Weather,
  site: Site,
  span: { nowHour: number; hourCount: number },
): WorkingHours {
  const axis = { startUtcMs: weather.startUtcMs, hourCount: span.hourCount };
  const raw = mapHours(weather.hours, (column) => lengthened(column, span.hourCount));
  const tally = new Tally(span.hourCount);
  const columns = {
    ...raw,
    tempC: bridgeShortGaps(raw.tempC, MOST_BRIDGED_HOURS),
    dewPointC: bridgeShortGaps(raw.dewPointC, MOST_BRIDGED_HOURS),
    windMPerS: bridgeShortGaps(raw.windMPerS, MOST_BRIDGED_HOURS),
    cloudFrac: bridgeShortGaps(raw.cloudFrac, MOST_BRIDGED_HOURS),
    rainMm: bridgeShortGaps(raw.rainMm, 1),
  };
  for (let hour = 0; hour < span.hourCount; hour++) {
    if (Number.isNaN(raw.tempC[hour]!) && !Number.isNaN(columns.tempC[hour]!)) tally.mark(BRIDGED, hour);
  }
  const memberMean = weather.members ? memberMeans(weather.members, span.hourCount) : null;
  return { site, ...axis, nowHour: span.nowHour, columns, memberMean, sun: sunHours(axis, site), tally };
}

/** Index of the hour that begins at the whole hour of now, held to the axis. */
export function hourOfNow(weather: Weather, nowUtcMs: number): number {
  const hour = Math.floor((nowUtcMs - weather.startUtcMs) / HOUR_MS);
  return Math.max(0, hour);
}

function lengthened(column: Float64Array, hourCount: number): Float64Array {
  const out = new Float64Array(hourCount).fill(Number.NaN);
  out.set(column.subarray(0, hourCount));
  return out;
}

function memberMeans(members: MemberColumns, hourCount: number): Pick<HourColumns, MemberQuantity> {
  const mean = (column: Float64Array) => {
    const out = new Float64Array(hourCount);
    for (let hour = 0; hour < hourCount; hour++) {
      let sum = 0;
      for (let m = 0; m < members.memberCount; m++) {
        sum += column[hour * members.memberCount + m] ?? Number.NaN;
      }
      out[hour] = sum / members.memberCount;
    }
    return out;
  };
  return {
    tempC: mean(members.tempC),
    dewPointC: mean(members.dewPointC),
    rainMm: mean(members.rainMm),
    windMPerS: mean(members.windMPerS),
    radiationMjPerM2: mean(members.radiationMjPerM2),
  };
}
