import { calendarDay, utcMsOfLocal } from "../core/site/local-days.ts";
import { HOUR_MS } from "../core/weather/weather.ts";
import { showers } from "./climate.ts";
import { HARBOUR_SITE } from "./harbour-site.ts";
import { bent, type MemberBend, straight } from "./member-bend.ts";
import { skyAt } from "./sky-at.ts";

/**
 * Columns by stamp, as feeds send them: temperature, dew point, wind, gust, cloud and code are as they stand at the
 * stamp; rain and radiation are sums of the hour that ends there.
 */
export interface InventedStamps {
  readonly tempC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly windMPerS: Float64Array;
  readonly gustMPerS: Float64Array;
  readonly cloudFrac: Float64Array;
  /** WMO code 4677. */
  readonly weatherCode: Float64Array;
  readonly rainMm: Float64Array;
  readonly radiationMjPerM2: Float64Array;
}

export type MemberStamps = Pick<
  InventedStamps,
  "tempC" | "dewPointC" | "windMPerS" | "rainMm" | "radiationMjPerM2"
>;

export interface InventedWeather {
  /** The first stamp: midnight UTC of a day. Stamp i is i hours later. */
  readonly startUtcMs: number;
  readonly stampCount: number;
  readonly elevationM: number;
  readonly hours: InventedStamps;
  /** Share of members with rain in the hour. */
  readonly rainChanceFrac: Float64Array;
  /** The first follows the forecast; NaN before today. */
  readonly members: readonly MemberStamps[];
}

const PAST_DAYS = 95;
const AHEAD_DAYS = 18;
const MEMBERS = 31;
const STAMPS = (PAST_DAYS + AHEAD_DAYS) * 24;
const WET_MM = 0.1;

/** The invented weather, laid out relative to now: the storm is always tomorrow afternoon on the site's clock. */
export function inventedWeather(nowUtcMs: number, seed: number): InventedWeather {
  const todayUtcMs = Math.floor(nowUtcMs / (24 * HOUR_MS)) * 24 * HOUR_MS;
  const axis = {
    startUtcMs: todayUtcMs - PAST_DAYS * 24 * HOUR_MS,
    midnightUtcMs: utcMsOfLocal(calendarDay(nowUtcMs, HARBOUR_SITE.zone), 0, HARBOUR_SITE.zone),
    nowUtcMs,
    seed,
  };
  const story = showers();
  const hours = stamps(axis, { bend: straight(story), fromStamp: 0 });
  const nowDay = (nowUtcMs - axis.midnightUtcMs) / (24 * HOUR_MS);
  const members = Array.from({ length: MEMBERS }, (_, member) => {
    const bend = member === 0 ? straight(story) : bent({ member, seed, showers: story, nowDay });
    return stamps(axis, { bend, fromStamp: PAST_DAYS * 24 });
  });
  return {
    startUtcMs: axis.startUtcMs,
    stampCount: STAMPS,
    elevationM: HARBOUR_SITE.elevationM,
    hours,
    rainChanceFrac: rainChance(members),
    members,
  };
}

interface Axis {
  readonly startUtcMs: number;
  readonly midnightUtcMs: number;
  readonly nowUtcMs: number;
  readonly seed: number;
}

function stamps(axis: Axis, course: { bend: MemberBend; fromStamp: number }): InventedStamps {
  const empty = () => new Float64Array(STAMPS).fill(Number.NaN);
  const out = {
    tempC: empty(),
    dewPointC: empty(),
    windMPerS: empty(),
    gustMPerS: empty(),
    cloudFrac: empty(),
    weatherCode: empty(),
    rainMm: empty(),
    radiationMjPerM2: empty(),
  };
  for (let i = course.fromStamp; i < STAMPS; i++) {
    const sky = skyAt({
      ...axis,
      utcMs: axis.startUtcMs + i * HOUR_MS,
      bend: course.bend,
      site: HARBOUR_SITE,
    });
    for (const name of Object.keys(out) as (keyof InventedStamps)[]) out[name][i] = sky[name];
  }
  return out;
}

function rainChance(members: readonly MemberStamps[]): Float64Array {
  return Float64Array.from({ length: STAMPS }, (_, i) => {
    const wet = members.filter(({ rainMm }) => rainMm[i]! >= WET_MM).length;
    return Number.isNaN(members[0]!.rainMm[i]!) ? Number.NaN : wet / members.length;
  });
}
