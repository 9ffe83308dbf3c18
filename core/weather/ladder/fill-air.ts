import { windFactorTo2m } from "../wind-profile.ts";
import { rangeAround } from "./day-window.ts";
import type { Rung } from "./tally.ts";
import type { WorkingHours } from "./working-hours.ts";

/**
 * Dew point below the night's minimum, °C. The plain rule "dew point = minimum" is damp by 2 to 5 °C in towns: the
 * means of four airports are -2.1, -1.6, -5.1 and -3.4 °C, 3 on average. [our reckoning from hourly reports of Seattle
 * and Portland 2014 and New York 2013] FAO56 gives 0 for humid and 2 to 3 °C for dry places.
 */
const BELOW_MINIMUM_C = 3;
/** °C of dew point: half the range of those four means, and the scatter of days about them. */
const HUMIDITY_FROM_MINIMUM: Rung = {
  quantity: "humidity",
  method: "night-minimum-less-3",
  errorEstimate: 3,
};
const HUMIDITY_FROM_MEMBERS: Rung = { quantity: "humidity", method: "ensemble-mean", errorEstimate: 1.5 };

/** Wind where it is unknown, m/s at 2 m. [FAO56 ch. 3, missing wind speed] */
const UNKNOWN_WIND_AT_2M = 2;
/** Relative error of ET0: 1 m/s more or less turns 4.56 mm into 4.8 or 4.2. [FAO56 ex. 20] */
const WIND_TWO: Rung = { quantity: "wind", method: "two-metres-a-second", errorEstimate: 0.08 };
const WIND_FROM_MEMBERS: Rung = { quantity: "wind", method: "ensemble-mean", errorEstimate: 0.04 };

/** Strongest gust over mean wind where no gust is told: about 1.6 over open country. Common practice. */
const GUST_FACTOR = 1.6;

export function humidityIsFromMinimum(work: WorkingHours, hour: number): boolean {
  return work.tally.has(HUMIDITY_FROM_MINIMUM, hour);
}

export function windIsTaken(work: WorkingHours, hour: number): boolean {
  return work.tally.has(WIND_TWO, hour);
}

/** Dew point: ensemble, then the lowest temperature of the 24 hours around less the deficit above. */
export function fillHumidity(work: WorkingHours): void {
  const { columns, memberMean, tally } = work;
  for (let hour = 0; hour < work.hourCount; hour++) {
    const temp = columns.tempC[hour]!;
    if (Number.isNaN(columns.dewPointC[hour]!)) {
      const fromMembers = memberMean?.dewPointC[hour] ?? Number.NaN;
      const byMinimum = Number.isNaN(fromMembers);
      columns.dewPointC[hour] = byMinimum
        ? rangeAround(columns.tempC, hour).least - BELOW_MINIMUM_C
        : fromMembers;
      tally.mark(byMinimum ? HUMIDITY_FROM_MINIMUM : HUMIDITY_FROM_MEMBERS, hour);
    }
    // Air cannot hold more than it can; rounded columns of a feed cross by a tenth.
    columns.dewPointC[hour] = Math.min(columns.dewPointC[hour]!, temp);
  }
}

/** Wind and gust: ensemble, then 2 m/s; a gust from the wind by a common factor. */
export function fillWind(work: WorkingHours): void {
  const { columns, memberMean, tally } = work;
  for (let hour = 0; hour < work.hourCount; hour++) {
    if (Number.isNaN(columns.windMPerS[hour]!)) {
      const fromMembers = memberMean?.windMPerS[hour] ?? Number.NaN;
      const unknown = Number.isNaN(fromMembers);
      columns.windMPerS[hour] = unknown ? UNKNOWN_WIND_AT_2M / windFactorTo2m(10) : fromMembers;
      tally.mark(unknown ? WIND_TWO : WIND_FROM_MEMBERS, hour);
    }
    if (Number.isNaN(columns.gustMPerS[hour]!)) {
      columns.gustMPerS[hour] = GUST_FACTOR * columns.windMPerS[hour]!;
    }
    if (Number.isNaN(columns.weatherCode[hour]!)) columns.weatherCode[hour] = -1;
  }
}
