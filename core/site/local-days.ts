import { HOUR_MS } from "../weather/weather.ts";
import type { CalendarDay } from "./site.ts";
import { zoneOffsetMs } from "./zone-offset.ts";

const DAY_MS = 24 * HOUR_MS;

/** One local day on an hour axis; 23, 24 or 25 hours long, shorter where the axis begins or ends. */
export interface LocalDay {
  readonly day: CalendarDay;
  readonly fromHour: number;
  /** Exclusive. */
  readonly toHour: number;
}

/**
 * Local days of an axis of whole UTC hours. An hour belongs to the day in which its middle lies, so that zones
 * off by half an hour need no half hours.
 */
export function localDays(axis: { startUtcMs: number; hourCount: number }, zone: string): LocalDay[] {
  const days: LocalDay[] = [];
  let day: CalendarDay | undefined;
  let dayNumber = Number.NaN;
  let fromHour = 0;
  for (let hour = 0; hour < axis.hourCount; hour++) {
    const utcMs = axis.startUtcMs + (hour + 0.5) * HOUR_MS;
    const number = Math.floor((utcMs + zoneOffsetMs(utcMs, zone)) / DAY_MS);
    if (number === dayNumber) continue;
    if (day !== undefined) days.push({ day, fromHour, toHour: hour });
    day = calendarDay(utcMs, zone);
    dayNumber = number;
    fromHour = hour;
  }
  if (day !== undefined) days.push({ day, fromHour, toHour: axis.hourCount });
  return days;
}

/** Local clock as hours since midnight, 0 to 23.99. */
export function localHour(utcMs: number, zone: string): number {
  const local = utcMs + zoneOffsetMs(utcMs, zone);
  return (((local % DAY_MS) + DAY_MS) % DAY_MS) / HOUR_MS;
}

/** The local date at an instant. */
export function calendarDay(utcMs: number, zone: string): CalendarDay {
  return new Date(utcMs + zoneOffsetMs(utcMs, zone)).toISOString().slice(0, 10) as CalendarDay;
}

/**
 * The instant at which the local clock shows an hour of a day. An hour that the clocks skip moves forward by what
 * is skipped; one that they show twice means the first.
 */
export function utcMsOfLocal(day: CalendarDay, hour: number, zone: string): number {
  const local = Date.parse(`${day}T00:00:00Z`) + hour * HOUR_MS;
  if (!Number.isFinite(local)) throw new RangeError(`no local time: day ${day}, hour ${hour}`);
  const before = zoneOffsetMs(local - 24 * HOUR_MS, zone);
  const after = zoneOffsetMs(local + 24 * HOUR_MS, zone);
  const early = local - Math.max(before, after);
  const late = local - Math.min(before, after);
  if (early + zoneOffsetMs(early, zone) === local) return early;
  if (late + zoneOffsetMs(late, zone) === local) return late;
  // Skipped: reckoned with the offset from before the change, the clock reads as much later as was skipped.
  return local - before;
}
