import type { CalendarDay, Site } from "../../site/site.ts";

/** Days as a weather station reports them, one after another without a gap. */
export interface DailyWeather {
  readonly site: Site;
  readonly climate: DayClimate;
  readonly firstDay: CalendarDay;
  /** Columns by day. */
  readonly rainMm: Float64Array;
  readonly tempMinC: Float64Array;
  readonly tempMaxC: Float64Array;
  /** Mean of the day at 10 m. */
  readonly windMPerS: Float64Array;
}

/** Wet hours of a day = factor x mm to the power, likewise the rain of its wettest hour, with what scatters them. */
export interface RainHoursLaw {
  readonly wetHours: PowerLaw;
  readonly maxHourMm: PowerLaw;
  /** Both scatter by this factor, as one standard deviation of the logarithm: ln of "times or divided by". */
  readonly scatterFactor: number;
  /** Spells in a day, on average. */
  readonly spells: number;
}

export interface PowerLaw {
  readonly factor: number;
  readonly power: number;
}

/** How the days of a place run through their hours. */
export interface DayClimate {
  readonly id: string;
  /** Mean of dew point less the day's minimum, °C. */
  readonly dewUnderMinimumC: number;
  /** Wind by the clock: 1 + swing x cos(2 pi (hour - peak) / 24), standard time. */
  readonly wind: { readonly swingFrac: number; readonly peakHour: number };
  /** Adjusts sun from the range of temperature. [FAO56 eq. 50] */
  readonly coastal: boolean;
  /** By month of the year, 0 to 11. */
  rainLaw(month: number): RainHoursLaw;
}
