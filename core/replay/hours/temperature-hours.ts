import { sunTimes } from "../../site/sun-times.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { DayAxis } from "./day-axis.ts";

/** Lag of the maximum after noon (h), decay by night, lag of the minimum after sunrise (h). [PARTON1981 table 1, air] */
const MAXIMUM_LAG_H = 1.86;
const NIGHT_DECAY = 2.2;
const MINIMUM_LAG_H = -0.17;

/** Rise and set where the sun does neither, hours from noon. Chosen by us. */
const HALF_DAY_H = 6;

/**
 * Temperature by hour from each day's extremes, °C: a sine by day, an exponential fall by night. [PARTON1981]
 *
 * Each local day's lowest and highest hour are its extremes exactly. Differs from source: the fall is stretched so that
 * it ends in the next minimum, which the source leaves by a ninth of the range; hours that the next day's colder
 * minimum would pull below the day's own are held at it.
 */
export function temperatureHoursC(
  axis: DayAxis,
  days: { readonly tempMinC: Float64Array; readonly tempMaxC: Float64Array },
): Float64Array {
  const out = new Float64Array(axis.hourCount);
  const suns = axis.days.map(({ day }) => sunOf(axis, day));
  for (const [d, { fromHour, toHour }] of axis.days.entries()) {
    for (let hour = fromHour; hour < toHour; hour++) {
      out[hour] = curveC({ suns, days, d, atHour: hour + 0.5 });
    }
    pin(out, { fromHour, toHour, minC: days.tempMinC[d]!, maxC: days.tempMaxC[d]! });
  }
  return out;
}

/** Hours on the axis of a day's minimum, sunset and length. */
interface SunOfDay {
  readonly lowestHour: number;
  readonly setHour: number;
  readonly lengthH: number;
}

function sunOf({ site, startUtcMs }: DayAxis, day: DayAxis["days"][number]["day"]): SunOfDay {
  const times = sunTimes(day, site);
  const hourOf = (utcMs: number) => (utcMs - startUtcMs) / HOUR_MS;
  const noon = hourOf(times.noonUtcMs);
  const rise = "riseUtcMs" in times ? hourOf(times.riseUtcMs) : noon - HALF_DAY_H;
  const set = "setUtcMs" in times ? hourOf(times.setUtcMs) : noon + HALF_DAY_H;
  return { lowestHour: rise + MINIMUM_LAG_H, setHour: set, lengthH: set - rise };
}

function curveC(at: {
  suns: readonly SunOfDay[];
  days: { readonly tempMinC: Float64Array; readonly tempMaxC: Float64Array };
  d: number;
  atHour: number;
}): number {
  const { suns, days, d, atHour } = at;
  const today = suns[d]!;
  if (atHour < today.lowestHour) return nightC(at, d - 1);
  if (atHour <= today.setHour) return dayC(days, { d, sun: today, atHour });
  return nightC(at, d);
}

function dayC(
  days: { readonly tempMinC: Float64Array; readonly tempMaxC: Float64Array },
  at: { d: number; sun: SunOfDay; atHour: number },
): number {
  const minC = days.tempMinC[at.d]!;
  const since = at.atHour - at.sun.lowestHour;
  return (
    minC + (days.tempMaxC[at.d]! - minC) * Math.sin((Math.PI * since) / (at.sun.lengthH + 2 * MAXIMUM_LAG_H))
  );
}

/** In the night that follows day d; before the first day and after the last, as if the day came again. */
function nightC(
  at: {
    suns: readonly SunOfDay[];
    days: { readonly tempMinC: Float64Array; readonly tempMaxC: Float64Array };
    atHour: number;
  },
  d: number,
): number {
  const last = at.suns.length - 1;
  const before = Math.max(0, d);
  const sunset = at.suns[before]!;
  const setHour = d < 0 ? sunset.setHour - 24 : sunset.setHour;
  const lowestHour = d >= last ? sunset.lowestHour + 24 : at.suns[d + 1]!.lowestHour;
  const atSunsetC = dayC(at.days, { d: before, sun: sunset, atHour: sunset.setHour });
  const nextMinC = at.days.tempMinC[Math.min(last, d + 1)]!;
  const share = (at.atHour - setHour) / (lowestHour - setHour);
  const floor = Math.exp(-NIGHT_DECAY);
  const left = (Math.exp(-NIGHT_DECAY * share) - floor) / (1 - floor);
  return nextMinC + (atSunsetC - nextMinC) * Math.max(0, left);
}

/** Holds a day's hours within its extremes and puts these into its lowest and highest hour. */
function pin(out: Float64Array, day: { fromHour: number; toHour: number; minC: number; maxC: number }): void {
  let lowest = day.fromHour;
  let highest = day.fromHour;
  for (let hour = day.fromHour; hour < day.toHour; hour++) {
    if (out[hour]! < out[lowest]!) lowest = hour;
    if (out[hour]! > out[highest]!) highest = hour;
  }
  for (let hour = day.fromHour; hour < day.toHour; hour++) {
    out[hour] = Math.min(day.maxC, Math.max(day.minC, out[hour]!));
  }
  out[lowest] = day.minC;
  out[highest] = day.maxC;
}
