import { localDays } from "../../site/local-days.ts";
import type { CalendarDay } from "../../site/site.ts";
import { RAIN_DAY_MM } from "../../weather/day-outline.ts";
import type { Spread } from "../../weather/spread.ts";
import type { HourColumns, Weather } from "../../weather/weather.ts";
import type { Told } from "./brier.ts";
import type { ToldPlan } from "./told-plan.ts";

/** Hours of a day that must be known. Chosen by us: a shower hides in more. */
const LEAST_KNOWN_HOURS = 23;

/** Rain of each whole local day, mm; days with unknown hours are left out. */
export function rainByDay(
  {
    startUtcMs,
    hourCount,
    hours,
  }: Pick<Weather, "startUtcMs" | "hourCount"> & {
    hours: Pick<HourColumns, "rainMm">;
  },
  zone: string,
): Map<CalendarDay, number> {
  const found = new Map<CalendarDay, number>();
  for (const { day, fromHour, toHour } of localDays({ startUtcMs, hourCount }, zone)) {
    let sumMm = 0;
    for (let hour = fromHour; hour < toHour; hour++) sumMm += hours.rainMm[hour]!;
    if (toHour - fromHour >= LEAST_KNOWN_HOURS && Number.isFinite(sumMm)) found.set(day, sumMm);
  }
  return found;
}

/** Tomorrow's rain as each plan told it, beside what fell: once a day, as the first plan of the day told it. */
export function toldRain(
  plans: readonly ToldPlan[],
  rainMmOn: ReadonlyMap<CalendarDay, number>,
): (Told & { rainMm: Spread; cameMm: number })[] {
  const firsts = new Map<CalendarDay, ToldPlan>();
  for (const plan of plans) {
    const first = firsts.get(plan.forDay);
    if (first === undefined || plan.issuedAt < first.issuedAt) firsts.set(plan.forDay, plan);
  }
  return [...firsts.values()].flatMap(({ forDay, days }) => {
    const tomorrow = days.find(({ day }) => day > forDay);
    const cameMm = tomorrow === undefined ? undefined : rainMmOn.get(tomorrow.day);
    if (tomorrow === undefined || cameMm === undefined) return [];
    const { rainMm, rainShareFrac } = tomorrow;
    return [{ toldFrac: rainShareFrac, cameTrue: cameMm >= RAIN_DAY_MM, rainMm, cameMm }];
  });
}
