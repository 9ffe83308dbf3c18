import { sunHours } from "../../site/sun-hours.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { shortwaveFromRange } from "../../weather/shortwave.ts";
import type { DailyWeather } from "./daily-weather.ts";
import type { DayAxis } from "./day-axis.ts";
import { REPLAY_STREAM } from "./streams.ts";

/** A wet day is gloomier than its range of temperature tells, a dry one brighter. Chosen by us. */
const WET_FACTOR = 0.75;
const DRY_FACTOR = 1.08;
const WET_MM = 1;
/** Scatter of a day's sun about that, share. Chosen by us, as the range alone misses daily sun by some 15 %. */
const SCATTER_FRAC = 0.15;
/** Least share of the sun above the air that comes through. Common practice: dense overcast. */
const LEAST_FRAC = 0.06;
/** Sun in a wet hour over that in a dry hour of the same day. Chosen by us. */
const WET_HOUR_FACTOR = 0.5;
const WET_HOUR_MM = 0.25;
/** Cloud from the share of sun: turned round from FAO56 eq. 35. */
const ANGSTROM = { overcast: 0.25, clear: 0.5 } as const;
const CLOUD_IN_RAIN_FRAC = 0.9;

/** A day's sun shared out over its hours: the clear course, dimmer in wet hours, the sum kept. */
export function sunHoursOfDays(
  axis: DayAxis,
  input: { daily: DailyWeather; rainMm: Float64Array; seed: number },
): { radiationMjPerM2: Float64Array; cloudFrac: Float64Array } {
  const sun = sunHours(axis, axis.site);
  const radiationMjPerM2 = new Float64Array(axis.hourCount);
  const cloudFrac = new Float64Array(axis.hourCount);
  for (const [d, { fromHour, toHour }] of axis.days.entries()) {
    const clear = sun.clearSkyMjPerM2.subarray(fromHour, toHour);
    const above = sum(sun.extraterrestrialMjPerM2.subarray(fromHour, toHour));
    const dayMjPerM2 = dailySunMjPerM2(axis, { ...input, d, above, clear: sum(clear) });
    const wet = input.rainMm.subarray(fromHour, toHour);
    radiationMjPerM2.set(shareOut(dayMjPerM2, { clear, wet }), fromHour);
    const sunshine = above > 0 ? (dayMjPerM2 / above - ANGSTROM.overcast) / ANGSTROM.clear : 0.5;
    const cloud = Math.min(1, Math.max(0, 1 - sunshine));
    for (let hour = fromHour; hour < toHour; hour++) {
      cloudFrac[hour] = input.rainMm[hour]! >= WET_HOUR_MM ? Math.max(CLOUD_IN_RAIN_FRAC, cloud) : cloud;
    }
  }
  return { radiationMjPerM2, cloudFrac };
}

/** Sun of one day from its range and its rain, MJ/m2, never above a clear sky. [FAO56 eq. 50] */
function dailySunMjPerM2(
  axis: DayAxis,
  of: { daily: DailyWeather; d: number; above: number; clear: number; seed: number },
): number {
  const { daily, d } = of;
  const random = seededRandom(seedFrom([of.seed, REPLAY_STREAM.sun, axis.firstDayNumber + d]));
  const fromRange = shortwaveFromRange({
    extraterrestrialMjPerM2: of.above,
    elevationM: axis.site.elevationM,
    tempMinC: daily.tempMinC[d]!,
    tempMaxC: daily.tempMaxC[d]!,
    coastal: daily.climate.coastal,
  });
  const sky = daily.rainMm[d]! >= WET_MM ? WET_FACTOR : DRY_FACTOR;
  const drawn = fromRange * sky * Math.exp(SCATTER_FRAC * random.normal());
  return Math.min(of.clear, Math.max(LEAST_FRAC * of.above, drawn));
}

/** What is cut off at a clear sky is given to the hours that still have room, so that the sum is kept. */
function shareOut(dayMjPerM2: number, of: { clear: Float64Array; wet: Float64Array }): Float64Array {
  const weights = of.clear.map((mj, i) => mj * (of.wet[i]! >= WET_HOUR_MM ? WET_HOUR_FACTOR : 1));
  const out = new Float64Array(of.clear.length);
  let left = dayMjPerM2;
  for (let round = 0; round < 30 && left > 1e-13; round++) {
    const open = weights.map((weight, i) => (out[i]! < of.clear[i]! ? weight : 0));
    const total = sum(open);
    if (total <= 0) break;
    const scale = left / total;
    left = 0;
    for (let i = 0; i < out.length; i++) {
      const wanted = out[i]! + open[i]! * scale;
      out[i] = Math.min(of.clear[i]!, wanted);
      left += wanted - out[i]!;
    }
  }
  return out;
}

function sum(column: Float64Array): number {
  return column.reduce((total, value) => total + value, 0);
}
