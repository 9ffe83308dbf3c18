import { HOUR_MS } from "../core/weather/weather.ts";
import { showers } from "./climate.ts";
import { HARBOUR_SITE } from "./harbour-site.ts";
import type { InventedHours, InventedWeather } from "./invented-weather-type.ts";
import { bent, type MemberBend, straight } from "./member-bend.ts";
import { type Sky, type SkyPlace, skyAt } from "./sky-at.ts";

const DAY_MS = 24 * HOUR_MS;
const PAST_DAYS = 95;
const AHEAD_DAYS = 18;
const MEMBERS = 31;
const STAMPS = (PAST_DAYS + AHEAD_DAYS) * 24;
const WET_MM = 0.1;

/**
 * The invented weather, laid out relative to now: the storm is always tomorrow afternoon, the cold night always in
 * four to five days. Another place has the same story under its own sun.
 */
export function inventedWeather(
  nowUtcMs: number,
  seed: number,
  place: SkyPlace = HARBOUR_SITE,
): InventedWeather {
  const clockMs = Math.round(place.lonDeg / 15) * HOUR_MS;
  const axis: Axis = {
    startUtcMs: Math.floor(nowUtcMs / DAY_MS) * DAY_MS - PAST_DAYS * DAY_MS,
    midnightUtcMs: Math.floor((nowUtcMs + clockMs) / DAY_MS) * DAY_MS - clockMs,
    nowUtcMs,
    seed,
    place,
  };
  const story = showers();
  const nowDay = (nowUtcMs - axis.midnightUtcMs) / DAY_MS;
  const members = Array.from({ length: MEMBERS }, (_, member) => {
    const bend = member === 0 ? straight(story) : bent({ member, seed, showers: story, nowDay });
    return course(axis, { bend, fromStamp: PAST_DAYS * 24 });
  });
  const hours = course(axis, { bend: straight(story), fromStamp: 0 });
  const rainChanceFrac = rainChances(members);
  return { startUtcMs: axis.startUtcMs, hours: { ...hours, rainChanceFrac, et0Mm: unknown() }, members };
}

interface Axis {
  readonly startUtcMs: number;
  readonly midnightUtcMs: number;
  readonly nowUtcMs: number;
  readonly seed: number;
  readonly place: SkyPlace;
}

type Course = { [K in keyof Sky]: number[] };

function course(axis: Axis, way: { bend: MemberBend; fromStamp: number }): Course {
  const skies = unknown().map((_, stamp) =>
    stamp < way.fromStamp
      ? null
      : skyAt({ ...axis, utcMs: axis.startUtcMs + stamp * HOUR_MS, bend: way.bend }),
  );
  const column = (name: keyof Sky) => skies.map((sky) => sky?.[name] ?? Number.NaN);
  return {
    tempC: column("tempC"),
    dewPointC: column("dewPointC"),
    windMPerS: column("windMPerS"),
    gustMPerS: column("gustMPerS"),
    cloudFrac: column("cloudFrac"),
    weatherCode: column("weatherCode"),
    rainMm: column("rainMm"),
    radiationWPerM2: column("radiationWPerM2"),
  };
}

/** Share of members with rain in the hour. */
function rainChances(members: readonly Pick<InventedHours, "rainMm">[]): number[] {
  return unknown().map((_, stamp) => {
    const rains = members.map(({ rainMm }) => rainMm[stamp]!);
    return rains.some(Number.isNaN) ? Number.NaN : rains.filter((mm) => mm >= WET_MM).length / rains.length;
  });
}

function unknown(): number[] {
  return Array.from({ length: STAMPS }, () => Number.NaN);
}
