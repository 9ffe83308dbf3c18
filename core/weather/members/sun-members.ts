import { ensembleCourse, missingSd } from "./ensemble-course.ts";
import { ERROR_STREAM } from "./error-draws.ts";
import { forecastError } from "./forecast-error.ts";
import { aheadOf, type MemberFrame } from "./member-frame.ts";

/** Relative error of a day's sun at lead 0: 2.6 of 17 MJ/m2 at 27 Spanish stations; it grows as that of ET0 does. */
const SUN_SD_FRAC = 0.15;
/** Error of cloud cover for one standard deviation, share of sky: 3.3 oktas over all leads. [WEATHERREAL2023] */
const CLOUD_SD_FRAC = 0.35;
/** How far a gloomier day goes with a wetter one. Chosen by us. */
const SUN_WITH_RAIN = -0.5;
/** Sun left, and cloud at least, in an hour of rain that the forecast had dry. Chosen by us. */
const SUN_IN_NEW_RAIN_FRAC = 0.5;
const CLOUD_IN_RAIN_FRAC = 0.9;
/** Least and most sun over a clear sky; broken cloud beside the sun can pass 1 for an hour. Common practice. */
const LEAST_CLEARNESS_FRAC = 0.05;
const MOST_CLEARNESS_FRAC = 1.05;
/** An hour counts as wet from here, mm. */
const WET_HOUR_MM = 0.2;

/** Sun (MJ/m2) and cloud (share of sky) by hour and member, gloomier where the member is wetter. */
export function sunMembers(
  frame: MemberFrame,
  rainMm: Float64Array,
): { radiationMjPerM2: Float64Array; cloudFrac: Float64Array } {
  const radiationMjPerM2 = ensembleCourse(frame, "radiationMjPerM2").column;
  const cloudFrac = new Float64Array(radiationMjPerM2.length);
  const base = {
    rainMm: aheadOf(frame, "rainMm"),
    cloudFrac: aheadOf(frame, "cloudFrac"),
    radiationMjPerM2: aheadOf(frame, "radiationMjPerM2"),
  };
  const clear = frame.settled.sun.clearSkyMjPerM2.subarray(frame.settled.nowHour);
  for (const day of frame.days) {
    const errors = sunErrors(frame, day.dayNumber);
    const has = frame.ensemble ? relativeSpread(radiationMjPerM2, day, frame.size) : 0;
    const growth = day.error.et0SdFrac / forecastError(0, frame.site.latDeg).et0SdFrac;
    const sd = missingSd(SUN_SD_FRAC * growth, has);
    for (let hour = day.fromHour; hour < day.toHour; hour++) {
      const newlyWet = base.rainMm[hour]! < WET_HOUR_MM;
      for (let m = 0; m < frame.size; m++) {
        const i = hour * frame.size + m;
        const wet = rainMm[i]! >= WET_HOUR_MM;
        const sun =
          radiationMjPerM2[i]! * (1 + sd * errors[m]!) * (wet && newlyWet ? SUN_IN_NEW_RAIN_FRAC : 1);
        const most = Math.max(base.radiationMjPerM2[hour]!, MOST_CLEARNESS_FRAC * clear[hour]!);
        radiationMjPerM2[i] = held(sun, LEAST_CLEARNESS_FRAC * clear[hour]!, most);
        const cloud = base.cloudFrac[hour]! - CLOUD_SD_FRAC * errors[m]!;
        cloudFrac[i] = held(cloud, wet ? CLOUD_IN_RAIN_FRAC : 0, 1);
      }
    }
  }
  return { radiationMjPerM2, cloudFrac };
}

function sunErrors(frame: MemberFrame, dayNumber: number): Float64Array {
  const rain = frame.errors(ERROR_STREAM.rain, dayNumber);
  const own = frame.errors(ERROR_STREAM.sun, dayNumber);
  return own.map((value, m) => SUN_WITH_RAIN * rain[m]! + Math.sqrt(1 - SUN_WITH_RAIN ** 2) * value);
}

/** Standard deviation over mean of the members' day sums. */
function relativeSpread(
  column: Float64Array,
  day: { fromHour: number; toHour: number },
  size: number,
): number {
  const sums = new Float64Array(size);
  for (let i = day.fromHour * size; i < day.toHour * size; i++) sums[i % size]! += column[i]!;
  const mean = sums.reduce((a, b) => a + b, 0) / size;
  if (!(mean > 0)) return 0;
  return Math.sqrt(sums.reduce((total, sum) => total + (sum / mean - 1) ** 2, 0) / size);
}

function held(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
