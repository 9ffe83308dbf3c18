import { SUN_HIGH_SINE } from "../sun-high.ts";
import type { WorkingHours } from "./working-hours.ts";

/** Cloud by WMO code 4677 as feeds use it: clear, mainly clear, partly cloudy, overcast. Chosen by us. */
const CLOUD_BY_CODE: readonly number[] = [0, 0.2, 0.5, 1];
/** Fog, rain and snow. */
const CLOUD_IN_WEATHER_FRAC = 0.95;

/**
 * Cloud where the feed tells none: from its weather code, else from its radiation while the sun is high, carried on
 * through the hours that tell nothing. Hours before the first that tells stay unknown.
 */
export function fillCloud(work: WorkingHours): void {
  const { cloudFrac } = work.columns;
  let carried = Number.NaN;
  for (let hour = 0; hour < work.hourCount; hour++) {
    if (Number.isNaN(cloudFrac[hour]!)) {
      const told = cloudTold(work, hour);
      if (!Number.isNaN(told)) carried = told;
      cloudFrac[hour] = carried;
    } else carried = cloudFrac[hour]!;
  }
}

/** What is left is taken as half covered. */
export function fillLastCloud(work: WorkingHours): void {
  fillCloud(work);
  const { cloudFrac } = work.columns;
  for (let hour = 0; hour < work.hourCount; hour++) if (Number.isNaN(cloudFrac[hour]!)) cloudFrac[hour] = 0.5;
}

function cloudTold({ columns, sun }: WorkingHours, hour: number): number {
  const code = columns.weatherCode[hour]!;
  if (code >= 0) return CLOUD_BY_CODE[code] ?? CLOUD_IN_WEATHER_FRAC;
  if (sun.heightSine[hour]! < SUN_HIGH_SINE) return Number.NaN;
  const clearness = columns.radiationMjPerM2[hour]! / sun.extraterrestrialMjPerM2[hour]!;
  // [FAO56 eq. 35] turned round, sunshine and cloud making up the day.
  return Math.min(1, Math.max(0, 1 - (clearness - 0.25) / 0.5));
}
