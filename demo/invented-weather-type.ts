/**
 * Invented weather by stamp: value j stands at `startUtcMs + j h`, a whole hour. Temperature, dew point, wind, cloud
 * and code are as at that instant; rain, its chance, gust, radiation and ET0 are of the hour that ends there.
 * NaN means that the invented feed does not know.
 */
export interface InventedCourse {
  readonly tempC: readonly number[];
  readonly dewPointC: readonly number[];
  readonly rainMm: readonly number[];
  readonly windMPerS: readonly number[];
  readonly radiationWPerM2: readonly number[];
}

export interface InventedHours extends InventedCourse {
  readonly rainChanceFrac: readonly number[];
  readonly gustMPerS: readonly number[];
  readonly cloudFrac: readonly number[];
  readonly weatherCode: readonly number[];
  readonly et0Mm: readonly number[];
}

export interface InventedWeather {
  readonly startUtcMs: number;
  readonly hours: InventedHours;
  /** Courses of the ensemble on the same stamps; empty for none. */
  readonly members: readonly InventedCourse[];
}

export interface InventedPlace {
  readonly id: number;
  readonly name: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number;
  readonly zone: string;
  readonly country: string;
  readonly countryCode: string;
  readonly region: string;
}
