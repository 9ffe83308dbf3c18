import { dayOfYear } from "../core/site/day-of-year.ts";
import { extraterrestrialHourMjPerM2 } from "../core/weather/extraterrestrial.ts";
import { clearSkyMjPerM2 } from "../core/weather/shortwave.ts";
import { HOUR_MS } from "../core/weather/weather.ts";
import { airAt, type Shower } from "./climate.ts";
import type { MemberBend } from "./member-bend.ts";

const DAY_MS = 24 * HOUR_MS;
/** One MJ spread over an hour, in watts. */
const W_PER_MJ_IN_HOUR = 1e6 / 3600;
const LOW_AT_HOUR = 6;
const HIGH_AT_HOUR = 15;

/** Where on earth, for the sun. */
export interface SkyPlace {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number;
}

export type Sky = ReturnType<typeof skyAt>;

/** Where and when, and on which course of the story. */
export interface SkyInput {
  readonly utcMs: number;
  readonly midnightUtcMs: number;
  readonly nowUtcMs: number;
  readonly seed: number;
  readonly bend: MemberBend;
  readonly place: SkyPlace;
}

/** The invented sky at one stamp: instants there, sums of the hour before it. */
export function skyAt(input: SkyInput) {
  const { bend, seed } = input;
  const dayTime = (input.utcMs - input.midnightUtcMs) / DAY_MS;
  const leadDays = Math.max(0, (input.utcMs - input.nowUtcMs) / DAY_MS);
  const air = airAt(bend.dayTimeOf(dayTime, leadDays), seed);
  const rain = rainIn({ fromDay: dayTime - 1 / 24, toDay: dayTime, showers: bend.showers });
  const tempC = air.meanC + air.halfRangeC * dayCourse(dayTime) + bend.warmerC(leadDays) - chill(rain);
  const cloudFrac = rain.mm > 0 ? Math.max(0.92, air.cloudFrac) : air.cloudFrac;
  const windMPerS = air.windMPerS * bend.windFactor * (0.8 + 0.35 * dayCourse(dayTime)) + squall(rain);
  return {
    tempC,
    dewPointC: Math.min(
      tempC - (rain.mm > 0 ? 0.6 : 1.2),
      air.dewPointC + bend.damperC(leadDays) + 3 * wet(rain),
    ),
    windMPerS,
    gustMPerS: rain.thunder ? 12.5 + 0.25 * rain.mm : 1.5 * windMPerS + 0.8,
    cloudFrac,
    weatherCode: codeOf(rain, cloudFrac),
    rainMm: rain.mm,
    radiationWPerM2: sunOfHour(input, cloudFrac),
  };
}

interface Rain {
  readonly mm: number;
  readonly thunder: boolean;
}

/** Rain between two instants. A thunderstorm pours in its first half: three quarters of its water. */
function rainIn(hour: { fromDay: number; toDay: number; showers: readonly Shower[] }): Rain {
  const parts = hour.showers.map((shower) => ({
    mm: shower.totalMm * (fallen(shower, hour.toDay) - fallen(shower, hour.fromDay)),
    thunder: shower.thunder,
  }));
  const mm = parts.reduce((sum, part) => sum + part.mm, 0);
  return { mm: mm < 0.05 ? 0 : mm, thunder: parts.some((part) => part.thunder && part.mm > 0.05) };
}

/** Share of a shower that has fallen by an instant. */
function fallen(shower: Shower, atDay: number): number {
  const goneFrac = Math.min(1, Math.max(0, ((atDay - shower.fromDay) * 24) / shower.hours));
  if (!shower.thunder) return goneFrac;
  return goneFrac < 0.5 ? 1.5 * goneFrac : 0.5 + 0.5 * goneFrac;
}

/** -1 at the coolest hour, 1 at the warmest. */
function dayCourse(dayTime: number): number {
  const hour = (dayTime - Math.floor(dayTime)) * 24;
  const day = HIGH_AT_HOUR - LOW_AT_HOUR;
  if (hour >= LOW_AT_HOUR && hour <= HIGH_AT_HOUR) return -Math.cos((Math.PI * (hour - LOW_AT_HOUR)) / day);
  const sinceHigh = hour > HIGH_AT_HOUR ? hour - HIGH_AT_HOUR : hour + 24 - HIGH_AT_HOUR;
  return Math.cos((Math.PI * sinceHigh) / (24 - day));
}

const wet = (rain: Rain) => Math.min(1, rain.mm / 2);
const chill = (rain: Rain) => (rain.thunder ? 6 : 2) * wet(rain);
const squall = (rain: Rain) => (rain.thunder ? 4 : 1) * wet(rain);

function codeOf(rain: Rain, cloudFrac: number): number {
  if (rain.thunder) return rain.mm > 8 ? 96 : 95;
  if (rain.mm > 0) return rain.mm > 2.5 ? 81 : 80;
  return cloudFrac < 0.2 ? 0 : cloudFrac < 0.5 ? 2 : 3;
}

/** Sun of the hour before the stamp. An overcast leaves a quarter: chosen by us because it makes a dull day. */
function sunOfHour({ utcMs, place }: SkyInput, cloudFrac: number): number {
  const beginUtcMs = utcMs - HOUR_MS;
  const extraterrestrialMjPerM2 = extraterrestrialHourMjPerM2({
    latDeg: place.latDeg,
    lonDeg: place.lonDeg,
    dayOfYear: dayOfYear(beginUtcMs),
    hourStartUtc: (beginUtcMs % DAY_MS) / HOUR_MS,
  });
  const clear = clearSkyMjPerM2({ extraterrestrialMjPerM2, elevationM: place.elevationM });
  return clear * W_PER_MJ_IN_HOUR * (1 - 0.75 * cloudFrac ** 3);
}
