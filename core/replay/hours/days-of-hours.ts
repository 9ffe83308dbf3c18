import { localDays } from "../../site/local-days.ts";
import type { Site } from "../../site/site.ts";
import type { HoursReady } from "../../weather/hours-ready.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { DailyWeather, DayClimate } from "./daily-weather.ts";
import { dayAxis } from "./day-axis.ts";
import { MONSOON_CLIMATE, NEW_YORK_CLIMATE } from "./day-climates.ts";

/** Hours that somebody has of a place, cut to whole local days, with the days as a station there would report them. */
export interface ToldDays {
  readonly daily: DailyWeather;
  readonly hours: HoursReady;
}

/**
 * One course of hours as whole local days of a site: sums of rain, extremes of temperature and mean wind. Days that the
 * course does not hold from midnight to midnight are left out at either end.
 *
 * @returns null when there is no whole day
 */
export function daysOfHours(site: Site, hours: HoursReady): ToldDays | null {
  const whole = localDays(hours, site.zone).slice(1, -1);
  const [first] = whole;
  if (first === undefined) return null;
  const axis = dayAxis(site, first.day, whole.length);
  const from = (axis.startUtcMs - hours.startUtcMs) / HOUR_MS;
  const cut = cutHours(hours, { from, hourCount: axis.hourCount });
  const byDay = (column: Float64Array, of: (hoursOfDay: Float64Array) => number) =>
    Float64Array.from(axis.days, (day) => of(column.subarray(day.fromHour, day.toHour)));
  const daily = {
    site,
    climate: climateNear(site),
    firstDay: first.day,
    rainMm: byDay(cut.rainMm, sumOf),
    tempMinC: byDay(cut.tempC, (column) => Math.min(...column)),
    tempMaxC: byDay(cut.tempC, (column) => Math.max(...column)),
    windMPerS: byDay(cut.windMPerS, (column) => sumOf(column) / column.length),
  };
  return { daily, hours: cut };
}

/** Columns of the course from an hour on. */
function cutHours(hours: HoursReady, to: { from: number; hourCount: number }): HoursReady {
  const cut = (column: Float64Array) => column.slice(to.from, to.from + to.hourCount);
  return {
    startUtcMs: hours.startUtcMs + to.from * HOUR_MS,
    hourCount: to.hourCount,
    memberCount: 1,
    tempC: cut(hours.tempC),
    dewPointC: cut(hours.dewPointC),
    rainMm: cut(hours.rainMm),
    windMPerS: cut(hours.windMPerS),
    radiationMjPerM2: cut(hours.radiationMjPerM2),
    cloudFrac: cut(hours.cloudFrac),
    gustMPerS: cut(hours.gustMPerS),
    weatherCode: cut(hours.weatherCode),
  };
}

const TROPIC_DEG = 23.44;

/**
 * How rain runs through a day where nobody has reckoned it: as on a monsoon coast in the tropics, as in New York
 * beyond. Chosen by us; where hours are told only a forecast's false alarms take their hours from it.
 */
export function climateNear({ latDeg }: Pick<Site, "latDeg">): DayClimate {
  return Math.abs(latDeg) <= TROPIC_DEG ? MONSOON_CLIMATE : NEW_YORK_CLIMATE;
}

function sumOf(column: Float64Array): number {
  return column.reduce((sum, value) => sum + value, 0);
}
