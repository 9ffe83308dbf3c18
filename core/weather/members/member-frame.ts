import { type LocalDay, localDays } from "../../site/local-days.ts";
import type { Site } from "../../site/site.ts";
import { isNormalHour } from "../ladder/fill-basics.ts";
import type { SettledHours } from "../ladder/settle-hours.ts";
import { HOUR_MS, type MemberColumns, type Weather } from "../weather.ts";
import { type DayErrors, dayErrors } from "./error-draws.ts";
import { type ForecastError, forecastError } from "./forecast-error.ts";

/** One local day ahead with what is known of its forecast's error. */
export interface MemberDay extends LocalDay {
  /** Days since 1970, the key of its random numbers. */
  readonly dayNumber: number;
  readonly leadDay: number;
  readonly error: ForecastError;
}

/** What all columns of members are made on. Hours count from now. */
export interface MemberFrame {
  readonly site: Site;
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly size: number;
  readonly seed: number;
  readonly errors: DayErrors;
  readonly days: readonly MemberDay[];
  readonly settled: SettledHours;
  /** The real ensemble cut to the hours ahead, or null. */
  readonly ensemble: Ensemble | null;
}

export interface Ensemble {
  readonly memberCount: number;
  readonly columns: Omit<MemberColumns, "memberCount">;
}

/** The hours from now of a settled weather, with the days' lead times counted from when the weather was fetched. */
export function memberFrame(
  input: { weather: Weather; site: Site; cloudSize: number; seed: number },
  settled: SettledHours,
): MemberFrame {
  const startUtcMs = settled.startUtcMs + settled.nowHour * HOUR_MS;
  const hourCount = settled.hourCount - settled.nowHour;
  const { fetchedUtcMs } = input.weather.origin;
  const days = localDays({ startUtcMs, hourCount }, input.site.zone).map((day) => {
    const middle = (day.fromHour + day.toHour) / 2;
    const isNormal = isNormalHour(settled, settled.nowHour + Math.floor(middle));
    const sinceFetched = (startUtcMs + middle * HOUR_MS - fetchedUtcMs) / (24 * HOUR_MS);
    const leadDay = isNormal ? Number.POSITIVE_INFINITY : Math.max(0, sinceFetched);
    const dayNumber = Date.parse(day.day) / (24 * HOUR_MS);
    return { ...day, dayNumber, leadDay, error: forecastError(leadDay, input.site.latDeg) };
  });
  const { site, seed, cloudSize: size } = input;
  const ensemble = ensembleAhead(input.weather.members, { fromHour: settled.nowHour, hourCount });
  return { site, startUtcMs, hourCount, size, seed, errors: dayErrors(seed, size), days, settled, ensemble };
}

/** The settled column from now on, one value an hour. */
export function aheadOf(frame: MemberFrame, name: keyof SettledHours["columns"]): Float64Array {
  return frame.settled.columns[name].subarray(frame.settled.nowHour);
}

/**
 * Which real member stands behind a member of the cloud: all in turn when the cloud is larger, evenly picked when it is
 * smaller.
 */
export function realMember(frame: MemberFrame, member: number): number {
  const { memberCount } = frame.ensemble!;
  return frame.size < memberCount ? Math.floor((member * memberCount) / frame.size) : member % memberCount;
}

function ensembleAhead(
  members: MemberColumns | null,
  span: { fromHour: number; hourCount: number },
): Ensemble | null {
  if (!members || members.memberCount < 2) return null;
  const { memberCount } = members;
  const cut = (column: Float64Array) =>
    column.subarray(span.fromHour * memberCount, (span.fromHour + span.hourCount) * memberCount);
  const columns = {
    tempC: cut(members.tempC),
    dewPointC: cut(members.dewPointC),
    rainMm: cut(members.rainMm),
    windMPerS: cut(members.windMPerS),
    radiationMjPerM2: cut(members.radiationMjPerM2),
  };
  const told = columns.rainMm.some(Number.isFinite) || columns.tempC.some(Number.isFinite);
  return told ? { memberCount, columns } : null;
}
