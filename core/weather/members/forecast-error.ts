/** Spread of a single forecast's error for one lead day, after its steady bias is taken off. */
export interface ForecastError {
  readonly tempMaxSdC: number;
  readonly tempMinSdC: number;
  /** Of the mean wind at 10 m. */
  readonly windSdMPerS: number;
  /** Of daily ET0, relative. */
  readonly et0SdFrac: number;
  /** Correlation of forecast and observed daily rain in normal scores. */
  readonly rainCorrelation: number;
}

type Row = readonly [number, number, number, number, number, number, number];

/**
 * By lead day 0 to 10: standard deviation of Tmax and Tmin outside the tropics and of Tmax in the monsoon (°C), of wind
 * (m/s) and of ET0 (relative), then rain correlation outside the tropics and in the monsoon.
 *
 * Our synthesis of published verification: days 0 to 2 from United States city forecasts of 2021-22 [NWSCITIES2022],
 * days 2 to 7 from the Japan Meteorological Agency's monthly scores [JMA2023] and a comparison of models over India
 * [AAGAM2026], growth to day 10 from a station comparison of two models [RALEIGH2026], ET0 from [MEDINA2020]. Days 8 to
 * 10 are extrapolated.
 */
const TABLE: readonly Row[] = [
  [1.4, 1.2, 1.1, 1.0, 0.12, 0.83, 0.8],
  [1.6, 1.5, 1.2, 1.0, 0.13, 0.81, 0.78],
  [1.7, 1.6, 1.3, 1.1, 0.14, 0.79, 0.75],
  [1.8, 1.7, 1.45, 1.15, 0.15, 0.77, 0.72],
  [2.0, 1.8, 1.55, 1.2, 0.16, 0.73, 0.7],
  [2.2, 2.0, 1.6, 1.25, 0.17, 0.67, 0.68],
  [2.4, 2.2, 1.8, 1.3, 0.185, 0.6, 0.66],
  [2.7, 2.5, 1.9, 1.35, 0.2, 0.5, 0.64],
  [3.0, 2.8, 2.0, 1.45, 0.21, 0.42, 0.6],
  [3.3, 3.1, 2.1, 1.5, 0.225, 0.36, 0.56],
  [3.6, 3.3, 2.15, 1.55, 0.24, 0.3, 0.52],
];

/**
 * Error of a forecast by lead day and latitude. Beyond day 10 that of day 10 holds: a forecast is then no better than
 * the season, so its error cannot go on growing. Between 20 and 30 degrees the two climates are blended.
 * @param leadDay 0 or more; Infinity for hours without a forecast, where rain tells nothing
 */
export function forecastError(leadDay: number, latDeg: number): ForecastError {
  const row = TABLE[Math.min(TABLE.length - 1, Math.max(0, Math.floor(leadDay)))]!;
  const [maxSd, minSd, maxSdTropics, wind, et0, rain, rainTropics] = row;
  const tropics = Math.min(1, Math.max(0, (30 - Math.abs(latDeg)) / 10));
  const blend = (outside: number, inside: number) => (1 - tropics) * outside + tropics * inside;
  return {
    tempMaxSdC: blend(maxSd, maxSdTropics),
    // No minimum was found for the tropics; taken to shrink as the maximum does.
    tempMinSdC: blend(minSd, (minSd * maxSdTropics) / maxSd),
    windSdMPerS: wind,
    et0SdFrac: et0,
    rainCorrelation: leadDay === Number.POSITIVE_INFINITY ? 0 : blend(rain, rainTropics),
  };
}
