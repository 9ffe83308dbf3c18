import { HOUR_MS, type HourColumns, type MemberColumns, type Weather } from "../weather.ts";

/** A weather that ended longer ago than this says nothing about now, and its axis would only be long. Chosen by us. */
const FORGOTTEN_AFTER_HOURS = 400 * 24;

/**
 * The same weather on an axis that holds now: one that begins later gets unknown hours in front, one that lies wholly
 * beyond the horizon or ended more than a year ago is replaced by an unknown hour.
 */
export function reachingNow(weather: Weather, of: { nowUtcMs: number; horizonHours: number }): Weather {
  const nowStartMs = Math.floor(of.nowUtcMs / HOUR_MS) * HOUR_MS;
  const missing = (weather.startUtcMs - nowStartMs) / HOUR_MS;
  const endedHours = -missing - weather.hourCount;
  if (missing >= of.horizonHours || endedHours > FORGOTTEN_AFTER_HOURS) {
    return { ...weather, ...unknownHours(weather, { startUtcMs: nowStartMs, hourCount: 1 }) };
  }
  return missing > 0 ? withHoursInFront(weather, Math.ceil(missing)) : weather;
}

type Axis = Pick<Weather, "startUtcMs" | "hourCount">;

function unknownHours(weather: Weather, axis: Axis): Omit<Weather, "origin"> {
  const none = () => new Float64Array(axis.hourCount).fill(Number.NaN);
  return { ...axis, hours: mapHours(weather.hours, none), members: null };
}

function withHoursInFront(weather: Weather, count: number): Weather {
  const { members } = weather;
  return {
    ...weather,
    startUtcMs: weather.startUtcMs - count * HOUR_MS,
    hourCount: weather.hourCount + count,
    hours: mapHours(weather.hours, (column) => inFront(column, count)),
    members: members && mapMembers(members, (column) => inFront(column, count * members.memberCount)),
  };
}

function inFront(column: Float64Array, count: number): Float64Array {
  const out = new Float64Array(column.length + count).fill(Number.NaN);
  out.set(column, count);
  return out;
}

/** Every column of a weather's hours changed in the same way. */
export function mapHours(hours: HourColumns, change: (column: Float64Array) => Float64Array): HourColumns {
  return {
    tempC: change(hours.tempC),
    dewPointC: change(hours.dewPointC),
    rainMm: change(hours.rainMm),
    windMPerS: change(hours.windMPerS),
    gustMPerS: change(hours.gustMPerS),
    radiationMjPerM2: change(hours.radiationMjPerM2),
    cloudFrac: change(hours.cloudFrac),
    weatherCode: change(hours.weatherCode),
    feedEt0Mm: change(hours.feedEt0Mm),
    feedRainChanceFrac: change(hours.feedRainChanceFrac),
  };
}

function mapMembers(members: MemberColumns, change: (column: Float64Array) => Float64Array): MemberColumns {
  return {
    memberCount: members.memberCount,
    tempC: change(members.tempC),
    dewPointC: change(members.dewPointC),
    rainMm: change(members.rainMm),
    windMPerS: change(members.windMPerS),
    radiationMjPerM2: change(members.radiationMjPerM2),
  };
}
