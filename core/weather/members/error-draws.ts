import { seededRandom, seedFrom } from "../seeded-random.ts";

/** Which error a stream is for; each has numbers of its own. */
export const ERROR_STREAM = {
  tempMax: 1,
  tempMin: 2,
  rain: 3,
  sun: 4,
  dew: 5,
  wind: 6,
  bias: 7,
  shape: 8,
} as const;

/** Correlation of the error of one valid day with that of the next: 0.21 to 0.32 in Seattle and New York. */
const DAY_TO_DAY = 0.25;
/** Days of memory that are summed; 0.25 to the sixth is nothing. */
const MEMORY_DAYS = 6;

/** Errors of one kind by member for a valid day; the same array for the same question, not to be changed. */
export type DayErrors = (stream: number, dayNumber: number) => Float64Array;

/**
 * Standard normal errors by member and valid day, correlated from day to day as a first-order autoregression.
 * [NWSCITIES2022, our reckoning]
 *
 * The numbers hang on the seed and on the valid day, not on the hour of asking: a plan made an hour later draws the
 * same errors for the same day, so advice does not waver for no reason. Over the members they have mean 0 and
 * variance 1 (each day's fresh part exactly), so that the middle of the members stays on the forecast.
 */
export function dayErrors(seed: number, count: number): DayErrors {
  const fresh = kept((stream, day) => evenNormals(seedFrom([seed, stream, day]), count));
  return kept((stream, day) => {
    const total = new Float64Array(count);
    for (let back = 0; back < MEMORY_DAYS; back++) {
      const weight = DAY_TO_DAY ** back * Math.sqrt(1 - DAY_TO_DAY ** 2);
      const part = fresh(stream, day - back);
      for (let member = 0; member < count; member++) total[member]! += weight * part[member]!;
    }
    return total;
  });
}

/** Draws once what is asked several times: six days share each day's fresh part, and quantities share streams. */
function kept(draw: DayErrors): DayErrors {
  const known = new Map<number, Float64Array>();
  return (stream, dayNumber) => {
    const key = dayNumber * 16 + stream;
    let errors = known.get(key);
    if (!errors) {
      errors = draw(stream, dayNumber);
      known.set(key, errors);
    }
    return errors;
  };
}

/** Standard normals of mean 0 and variance 1; a single one is 0. */
export function evenNormals(seed: number, count: number): Float64Array {
  const random = seededRandom(seed);
  const values = Float64Array.from({ length: count }, () => random.normal());
  const mean = values.reduce((a, b) => a + b, 0) / count;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count;
  const scale = variance > 0 ? 1 / Math.sqrt(variance) : 0;
  return values.map((value) => (value - mean) * scale);
}
