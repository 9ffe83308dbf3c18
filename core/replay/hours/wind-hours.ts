import { localHour } from "../../site/local-days.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { DailyWeather } from "./daily-weather.ts";
import type { DayAxis } from "./day-axis.ts";
import { REPLAY_STREAM } from "./streams.ts";

/** Scatter of an hour about the course of the day, as a share: 0.38 to 0.59 at four airports. [HOURLYRAIN] */
const SCATTER_FRAC = 0.45;
/** Winds stronger than this blow more evenly, by the square root. Chosen by us: storms would gust beyond all record. */
const STEADIER_ABOVE_M_PER_S = 3;
/** How far one hour's scatter goes with the next. Chosen by us. */
const HOUR_TO_HOUR = 0.7;
/** Strongest 3 s of an hour over its mean, and its scatter. Chosen by us within the 1.4 to 1.7 of open country. */
const GUST_FACTOR = 1.5;
const GUST_SCATTER = 0.12;
const LEAST_GUST_FACTOR = 1.1;

/** Wind and gust by hour at 10 m, m/s; the hours of a day have the day's mean exactly. */
export function windHoursMPerS(
  axis: DayAxis,
  { daily, seed }: { daily: DailyWeather; seed: number },
): { windMPerS: Float64Array; gustMPerS: Float64Array } {
  const windMPerS = new Float64Array(axis.hourCount);
  const gustMPerS = new Float64Array(axis.hourCount);
  const { swingFrac, peakHour } = daily.climate.wind;
  let departure = 0;
  for (const [d, { fromHour, toHour }] of axis.days.entries()) {
    const random = seededRandom(seedFrom([seed, REPLAY_STREAM.wind, axis.firstDayNumber + d]));
    const steadier = Math.max(1, daily.windMPerS[d]! / STEADIER_ABOVE_M_PER_S);
    const scatter = SCATTER_FRAC / Math.sqrt(steadier);
    let sum = 0;
    for (let hour = fromHour; hour < toHour; hour++) {
      const clock = localHour(axis.startUtcMs + (hour + 0.5) * HOUR_MS, axis.site.zone);
      departure = HOUR_TO_HOUR * departure + Math.sqrt(1 - HOUR_TO_HOUR ** 2) * random.normal();
      const course = 1 + swingFrac * Math.cos((2 * Math.PI * (clock - peakHour)) / 24);
      windMPerS[hour] = course * Math.exp(scatter * departure);
      gustMPerS[hour] = Math.max(LEAST_GUST_FACTOR, GUST_FACTOR * Math.exp(GUST_SCATTER * random.normal()));
      sum += windMPerS[hour]!;
    }
    const scale = (daily.windMPerS[d]! * (toHour - fromHour)) / sum;
    for (let hour = fromHour; hour < toHour; hour++) {
      windMPerS[hour]! *= scale;
      gustMPerS[hour]! *= windMPerS[hour]!;
    }
  }
  return { windMPerS, gustMPerS };
}
