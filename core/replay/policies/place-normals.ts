import type { HoursReady } from "../../weather/hours-ready.ts";
import type { DailyWeather } from "../hours/daily-weather.ts";
import { type DayAxis, monthOf } from "../hours/day-axis.ts";
import { et0OfHours, type PlaceNormals } from "./outlook.ts";

/** Half month of a date, 0 to 23. */
export function halfMonthOf(date: DayAxis["days"][number]["day"]): number {
  return 2 * monthOf(date) + (Number(date.slice(8, 10)) > 15 ? 1 : 0);
}

/** What long acquaintance with a town teaches: means by half month over all the years at hand. */
export function placeNormals(of: { daily: DailyWeather; hours: HoursReady; axis: DayAxis }): PlaceNormals {
  const { daily, axis, hours } = of;
  const column = () => new Float64Array(24);
  const sums = { meanMinimumC: column(), rainMmPerDay: column(), et0MmPerDay: column() };
  const counts = column();
  for (const [d, { day, fromHour, toHour }] of axis.days.entries()) {
    const half = halfMonthOf(day);
    counts[half]!++;
    sums.meanMinimumC[half]! += daily.tempMinC[d]!;
    sums.rainMmPerDay[half]! += daily.rainMm[d]!;
    sums.et0MmPerDay[half]! += et0OfHours(hours, {
      from: fromHour,
      to: toHour,
      elevationM: daily.site.elevationM,
    });
  }
  for (const name of ["meanMinimumC", "rainMmPerDay", "et0MmPerDay"] as const) {
    for (let half = 0; half < 24; half++) sums[name][half]! /= Math.max(1, counts[half]!);
  }
  return sums;
}
