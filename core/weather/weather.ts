/**
 * Hour columns. Index i is the hour that ENDS at `startUtcMs + (i + 1) h`. Sums and means (rain, radiation,
 * ET0, gust maximum) belong to that hour; instants in the feed (temperature, dew point, wind, cloud) are averaged
 * from both ends of the hour at the edge. NaN is unknown and is never zero.
 */
export interface HourColumns {
  /** Air at 2 m, °C. */
  readonly tempC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly rainMm: Float64Array;
  /** Mean wind at 10 m, m/s. */
  readonly windMPerS: Float64Array;
  /** Largest gust of the hour at 10 m, m/s. */
  readonly gustMPerS: Float64Array;
  /** Global shortwave, MJ/m2 in the hour. */
  readonly radiationMjPerM2: Float64Array;
  readonly cloudFrac: Float64Array;
  /** WMO code 4677 as the feed gives it. */
  readonly weatherCode: Float64Array;
  /** Reference evapotranspiration as reckoned by the feed, a rung of the ladder and a check. */
  readonly feedEt0Mm: Float64Array;
  /** Probability of rain in the hour as told by the feed, 0 to 1. */
  readonly feedRainChanceFrac: Float64Array;
}

/** Ensemble columns, hour-major with members innermost: index = hour * memberCount + member. */
export interface MemberColumns {
  readonly memberCount: number;
  readonly tempC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly rainMm: Float64Array;
  readonly windMPerS: Float64Array;
  readonly radiationMjPerM2: Float64Array;
}

export interface WeatherOrigin {
  /** "primary" and "fallback" are the feed roles; "demo" marks invented weather; "case" came on standard input. */
  readonly source: "primary" | "fallback" | "demo" | "case";
  /** When the newest part was fetched. */
  readonly fetchedUtcMs: number;
  /** Line of credit that stands wherever this weather is shown. */
  readonly credit: string;
  /** From here on the feed tells steps of several hours; rain is spread evenly over them, the rest interpolated. */
  readonly coarseFromUtcMs?: number;
}

/** The weather at a site, past and coming, on one unbroken hour axis. */
export interface Weather {
  /** Whole hour, epoch milliseconds. */
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly hours: HourColumns;
  /** Same hour axis; hours without members hold NaN. Null when no ensemble was had. */
  readonly members: MemberColumns | null;
  readonly origin: WeatherOrigin;
}

export const HOUR_MS = 3_600_000;
