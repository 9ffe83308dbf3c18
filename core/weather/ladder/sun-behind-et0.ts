import { relativeHumidityFrac } from "../humidity.ts";
import { defaultCloudRatioFrac } from "../longwave.ts";
import { et0OfOpenHourMm } from "../open-hour.ts";
import { SUN_HIGH_SINE } from "../sun-high.ts";
import type { WorkingHours } from "./working-hours.ts";

/** ET0 of an hour in the open with the sun put in, mm; the rest from the columns. */
export function et0WithSunMm(work: WorkingHours, hour: number, radiationMjPerM2: number): number {
  const { columns, sun } = work;
  const air = { tempC: columns.tempC[hour]!, dewPointC: columns.dewPointC[hour]! };
  const high = sun.heightSine[hour]! >= SUN_HIGH_SINE;
  return et0OfOpenHourMm({
    ...air,
    elevationM: work.site.elevationM,
    windMPerS: columns.windMPerS[hour]!,
    radiationMjPerM2,
    cloudRatioFrac: high
      ? radiationMjPerM2 / sun.clearSkyMjPerM2[hour]!
      : defaultCloudRatioFrac(relativeHumidityFrac(air)),
  });
}

/**
 * The sun with which our equation gives the ET0 that the feed reckoned for the hour, MJ/m2, 0 to clear sky. ET0 grows
 * with the sun, so halving the span finds it.
 */
export function sunBehindEt0MjPerM2(work: WorkingHours, hour: number): number {
  const target = work.columns.feedEt0Mm[hour]!;
  let low = 0;
  let high = work.sun.clearSkyMjPerM2[hour]!;
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (et0WithSunMm(work, hour, middle) < target) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
