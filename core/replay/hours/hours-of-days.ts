import type { HoursReady } from "../../weather/hours-ready.ts";
import type { DailyWeather } from "./daily-weather.ts";
import { dayAxis } from "./day-axis.ts";
import { dewPointHoursC } from "./dew-hours.ts";
import { rainHoursMm } from "./rain-hours.ts";
import { sunHoursOfDays } from "./sun-hours-of-days.ts";
import { temperatureHoursC } from "./temperature-hours.ts";
import { windHoursMPerS } from "./wind-hours.ts";

/**
 * Days cut into plausible hours: one course of weather that keeps every day's rain, extremes of temperature and mean
 * wind. The same seed gives the same hours; another seed other hours of the same days.
 *
 * Only rain, temperature and wind are a station's; dew point and sun are reckoned from them and drawn. Rain does not run
 * on over midnight by design, and snow counts as rain.
 */
export function hoursOfDays(daily: DailyWeather, seed: number): HoursReady {
  const axis = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);
  const tempC = temperatureHoursC(axis, daily);
  const rainMm = rainHoursMm(axis, { daily, seed });
  const { startUtcMs, hourCount } = axis;
  return {
    startUtcMs,
    hourCount,
    memberCount: 1,
    tempC,
    dewPointC: dewPointHoursC(axis, { daily, tempC, seed }),
    rainMm,
    ...windHoursMPerS(axis, { daily, seed }),
    ...sunHoursOfDays(axis, { daily, rainMm, seed }),
    weatherCode: new Float64Array(hourCount).fill(-1),
  };
}
