import type { RandomStream } from "../seeded-random.ts";

/** Wet hours of a day = factor x mm to the power. Reckoned from open hourly reports. [HOURLYRAIN, our reckoning] */
const WET_HOURS = {
  /** New York, June to September. */
  warm: { factor: 1.53, power: 0.45 },
  /** New York, November to March. */
  cold: { factor: 2.65, power: 0.47 },
  /** Guangzhou, April to September. */
  tropics: { factor: 1.2, power: 0.43 },
} as const;

export type RainClimate = keyof typeof WET_HOURS;

/** Share of rain by 3 hours of the local day where showers rule: Guangzhou, April to September. [HOURLYRAIN] */
const SHOWER_CLOCK_FRAC = [0.08, 0.09, 0.1, 0.11, 0.18, 0.19, 0.17, 0.1] as const;

/** Showers of the warm season by latitude and warmth of the day. Limits chosen by us. */
export function rainClimate(latDeg: number, meanTempC: number): RainClimate {
  if (Math.abs(latDeg) < 25 && meanTempC > 20) return "tropics";
  return meanTempC > 15 ? "warm" : "cold";
}

/** Hours with rain on a day with so much of it, 1 to 24. */
export function wetHoursOfDay(rainMm: number, climate: RainClimate): number {
  const { factor, power } = WET_HOURS[climate];
  return Math.min(24, Math.max(1, Math.round(factor * rainMm ** power)));
}

/**
 * Share of a day's rain by hour for a day that the forecast had dry: one spell, rising and falling, that starts at a
 * drawn hour.
 * @param into one value an hour of the day; sums to 1
 */
export function drawSpell(
  into: Float64Array,
  of: { rainMm: number; climate: RainClimate; firstClockHour: number; random: RandomStream },
): void {
  into.fill(0);
  const length = Math.min(into.length, wetHoursOfDay(of.rainMm, of.climate));
  const start = Math.min(into.length - length, drawStart(into.length, of));
  let sum = 0;
  for (let hour = 0; hour < length; hour++) {
    const weight = Math.sin((Math.PI * (hour + 0.5)) / length);
    into[start + hour] = weight;
    sum += weight;
  }
  for (let hour = 0; hour < length; hour++) into[start + hour]! /= sum;
}

function drawStart(
  hourCount: number,
  of: { climate: RainClimate; firstClockHour: number; random: RandomStream },
): number {
  const weightAt = (hour: number) =>
    of.climate === "cold" ? 1 : SHOWER_CLOCK_FRAC[Math.floor(((of.firstClockHour + hour) % 24) / 3)]!;
  let sum = 0;
  for (let hour = 0; hour < hourCount; hour++) sum += weightAt(hour);
  let left = of.random.uniform() * sum;
  for (let hour = 0; hour < hourCount; hour++) {
    left -= weightAt(hour);
    if (left < 0) return hour;
  }
  return hourCount - 1;
}
