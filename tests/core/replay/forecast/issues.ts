import { type Forecaster, forecaster } from "../../../../core/replay/forecast/forecaster.ts";
import { NO_BIAS } from "../../../../core/replay/forecast/place-bias.ts";
import type { DailyWeather } from "../../../../core/replay/hours/daily-weather.ts";
import { type DayAxis, dayAxis } from "../../../../core/replay/hours/day-axis.ts";
import { hoursOfDays } from "../../../../core/replay/hours/hours-of-days.ts";
import { HOUR_MS, type Weather } from "../../../../core/weather/weather.ts";
import { BUILT_IN_PLACES, daysOfPlace } from "../../../../service/replay/built-in-places.ts";

export const LEADS = 8;
export const MEMBERS = 30;

/** One place's four years with the forecasts of every morning, no steady bias. */
export interface Issues {
  readonly daily: DailyWeather;
  readonly axis: DayAxis;
  readonly forecasts: Forecaster;
  readonly firstIssue: number;
  readonly lastIssue: number;
}

export function issuesOf(placeId: string, of: { seed: number; memberCount: number }): Issues {
  const { seed, memberCount } = of;
  const daily = daysOfPlace(BUILT_IN_PLACES.find(({ id }) => id === placeId)!);
  const axis = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);
  const hours = hoursOfDays(daily, seed);
  const forecasts = forecaster({ daily, hours, seed, memberCount, bias: NO_BIAS });
  return { daily, axis, forecasts, firstIssue: 1, lastIssue: axis.days.length - LEADS - 1 };
}

export function issueOf({ axis, forecasts }: Issues, issueDay: number): Weather {
  const issueUtcMs = axis.startUtcMs + (axis.days[issueDay]!.fromHour + 7) * HOUR_MS;
  return forecasts.weatherAt({ issueDay, issueUtcMs, pastDays: 0, aheadDays: LEADS });
}

/** Hours of a day on the axis of an issue without a past. */
export function hoursOfLead({ axis }: Issues, issueDay: number, lead: number): { from: number; to: number } {
  const start = axis.days[issueDay]!.fromHour;
  const { fromHour, toHour } = axis.days[issueDay + lead]!;
  return { from: fromHour - start, to: toHour - start };
}

export const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length;

export const rms = (values: readonly number[]) => Math.sqrt(mean(values.map((value) => value ** 2)));

export function correlation(one: readonly number[], other: readonly number[]): number {
  const [a, b] = [mean(one), mean(other)];
  const product = mean(one.map((value, i) => (value - a) * (other[i]! - b)));
  return product / (rms(one.map((value) => value - a)) * rms(other.map((value) => value - b)));
}
