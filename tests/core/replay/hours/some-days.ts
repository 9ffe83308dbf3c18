import type { DailyWeather } from "../../../../core/replay/hours/daily-weather.ts";
import { SEATTLE_CLIMATE } from "../../../../core/replay/hours/day-climates.ts";
import type { CalendarDay, Site } from "../../../../core/site/site.ts";

export const SITE: Site = {
  id: "here",
  name: "Here",
  latDeg: 47.5,
  lonDeg: -122.3,
  elevationM: 100,
  zone: "America/Los_Angeles",
};

/** Invented days, each the same unless changed. */
export function someDays(count: number, change: Partial<DailyWeather> = {}): DailyWeather {
  const column = (value: number) => new Float64Array(count).fill(value);
  return {
    site: SITE,
    climate: SEATTLE_CLIMATE,
    firstDay: "2013-03-01" as CalendarDay,
    rainMm: column(0),
    tempMinC: column(5),
    tempMaxC: column(15),
    windMPerS: column(3),
    ...change,
  };
}
