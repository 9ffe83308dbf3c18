import { WET_DAY_MM } from "../../weather/members/rain-law.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import type { DayClimate } from "../hours/daily-weather.ts";
import { monthOf } from "../hours/day-axis.ts";
import { rainOfDayMm } from "../hours/rain-hours.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";
import type { DayErrors } from "./day-errors.ts";
import type { Truth } from "./forecast-hours.ts";
import type { PlaceBias } from "./place-bias.ts";

/** Most that a true day's hours are stretched to; beyond, the rain told gets hours of its own. */
const MOST_STRETCH = 6;

/** For each day: its true rain, and the hours that a day told wet but dry in truth gets, as shares of its sum. */
export interface RainDays {
  readonly rainMm: Float64Array;
  ownShape(day: number): Float64Array;
}

/** The shapes are drawn when asked for; every issue tells the same hours of a day that stays dry. */
export function rainDays(of: {
  rainMm: Float64Array;
  climate: DayClimate;
  days: Truth["days"];
  firstDayNumber: number;
  seed: number;
}): RainDays {
  const shapes = new Map<number, Float64Array>();
  return {
    rainMm: of.rainMm,
    ownShape(day) {
      const known = shapes.get(day);
      if (known !== undefined) return known;
      const { day: date, fromHour, toHour } = of.days[day]!;
      const random = seededRandom(seedFrom([of.seed, REPLAY_STREAM.forecastShape, of.firstDayNumber + day]));
      const rainMm = USUAL_DAY_MM;
      const law = of.climate.rainLaw(monthOf(date));
      const shape = rainOfDayMm({ rainMm, hourCount: toHour - fromHour, law, random }).map(
        (mm) => mm / rainMm,
      );
      shapes.set(day, shape);
      return shape;
    },
  };
}

/** A false alarm's day takes its number of hours from this depth. Chosen by us. */
const USUAL_DAY_MM = 5;

/** Rain by hour and member as told: the day's sum laid over its true hours, shifted, or over hours of its own. */
export function fillForecastRain(
  truth: Truth,
  of: {
    fromDay: number;
    toDay: number;
    errors: DayErrors;
    bias: PlaceBias;
    fromHour: number;
    hourCount: number;
  },
): Float64Array {
  const { errors, bias, fromHour } = of;
  const { size } = errors;
  const out = new Float64Array(of.hourCount * size);
  for (let day = of.fromDay; day < of.toDay; day++) {
    const { fromHour: from, toHour: to } = truth.days[day]!;
    const length = to - from;
    const trueMm = truth.rainDays.rainMm[day]!;
    for (let m = 0; m < size; m++) {
      const at = (day - of.fromDay) * size + m;
      const toldMm = errors.rainMm[at]! * bias.rainFactor;
      if (toldMm <= 0) continue;
      const own = trueMm < WET_DAY_MM || toldMm > MOST_STRETCH * trueMm;
      const shape = own ? truth.rainDays.ownShape(day) : truth.hours.rainMm.subarray(from, to);
      const scale = own ? toldMm : toldMm / trueMm;
      const shift = Math.round(errors.shiftHours[at]!);
      for (let k = 0; k < length; k++) {
        const source = (((k - shift) % length) + length) % length;
        out[(from - fromHour + k) * size + m] = scale * shape[source]!;
      }
    }
  }
  return out;
}
