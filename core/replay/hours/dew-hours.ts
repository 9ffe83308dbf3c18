import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import type { DailyWeather } from "./daily-weather.ts";
import type { DayAxis } from "./day-axis.ts";
import { REPLAY_STREAM } from "./streams.ts";

/** From here a day counts as wet, mm. */
const WET_MM = 1;
/** On wet days the dew point stands this much nearer to the minimum than on dry ones, °C. Chosen by us. */
const WET_NEARER_C = 3;
/** Scatter of the daily dew point about that, °C, and how far one day goes with the next. Chosen by us. */
const SCATTER_C = 1.8;
const DAY_TO_DAY = 0.5;

/**
 * Dew point by hour, °C. Not the minimum: over towns it lies some degrees below it on average. [HOURLYRAIN, our
 * reckoning] The mean of all days is the climate's, wet days lie nearer, and each day scatters; straight from noon to
 * noon and never above the air.
 */
export function dewPointHoursC(
  axis: DayAxis,
  input: { daily: DailyWeather; tempC: Float64Array; seed: number },
): Float64Array {
  const daysC = dailyDewC(axis, input);
  const middles = axis.days.map(({ fromHour, toHour }) => (fromHour + toHour) / 2);
  const out = new Float64Array(axis.hourCount);
  for (const [d, { fromHour, toHour }] of axis.days.entries()) {
    for (let hour = fromHour; hour < toHour; hour++) {
      const other = hour + 0.5 < middles[d]! ? Math.max(0, d - 1) : Math.min(daysC.length - 1, d + 1);
      const share = other === d ? 0 : Math.abs((hour + 0.5 - middles[d]!) / (middles[other]! - middles[d]!));
      const dewC = daysC[d]! + share * (daysC[other]! - daysC[d]!);
      out[hour] = Math.min(input.tempC[hour]!, dewC);
    }
  }
  return out;
}

function dailyDewC(axis: DayAxis, { daily, seed }: { daily: DailyWeather; seed: number }): Float64Array {
  const { rainMm, tempMinC, climate } = daily;
  const wetShare = rainMm.reduce((sum, mm) => sum + (mm >= WET_MM ? 1 : 0), 0) / rainMm.length;
  let departure = 0;
  return tempMinC.map((minC, d) => {
    const random = seededRandom(seedFrom([seed, REPLAY_STREAM.dew, axis.firstDayNumber + d]));
    departure = DAY_TO_DAY * departure + Math.sqrt(1 - DAY_TO_DAY ** 2) * random.normal();
    const wet = (rainMm[d]! >= WET_MM ? 1 : 0) - wetShare;
    return minC + climate.dewUnderMinimumC + WET_NEARER_C * wet + SCATTER_C * departure;
  });
}
