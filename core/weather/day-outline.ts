import type { DayOutline } from "../plan/plan.ts";
import { forcingAtSpot } from "../site/forcing-at-spot.ts";
import { instantOf } from "../site/instant.ts";
import { type LocalDay, localDays } from "../site/local-days.ts";
import type { Site } from "../site/site.ts";
import type { Spot } from "../site/spot.ts";
import type { HoursReady } from "./hours-ready.ts";
import type { WeatherReady } from "./ready.ts";
import { quantile, spreadOf } from "./spread.ts";
import { thunderHours } from "./thunder.ts";
import { HOUR_MS } from "./weather.ts";

/** The weather of the open site itself. */
const OPEN: Spot = {
  id: "open-site",
  name: "",
  kind: "open",
  skyFrac: 1,
  sunFrac: 1,
  windFrac: 1,
  rainFrac: 1,
  nightWarmthC: 0,
  walkOrder: 0,
};

/** A day counts as one with rain from so much on. 1 mm is the usual limit of climate tables. Common practice. */
export const RAIN_DAY_MM = 1;

/** A last day shorter than this would show a morning's warmth as the day's, and is left out. Chosen by us. */
const LEAST_LAST_HOURS = 18;

/** The sky over the site by local day, from now on; the first day begins with the hour of now. */
export function dayOutlines(ready: WeatherReady, site: Site): DayOutline[] {
  const { ahead } = ready;
  const { et0Mm } = forcingAtSpot(ahead, site, OPEN);
  const thunder = thunderHours(ahead);
  const days = localDays(ahead, site.zone).filter(
    (day, index) => index === 0 || day.toHour - day.fromHour >= LEAST_LAST_HOURS,
  );
  return days.map((day) => {
    const rainMm = byMember(ahead, day, { column: ahead.rainMm, fold: (a, b) => a + b, first: 0 });
    const wettest = byMember(ahead, day, { column: ahead.rainMm, fold: Math.max, first: 0 });
    const et0 = byMember(ahead, day, { column: et0Mm, fold: (a, b) => a + b, first: 0 });
    return {
      day: day.day,
      rainMm: spreadOf(rainMm),
      rainShareFrac: rainMm.filter((mm) => mm >= RAIN_DAY_MM).length / ahead.memberCount,
      peakRainMmPerH: quantile(wettest.sort(), 0.9),
      tempMinC: spreadOf(byMember(ahead, day, { column: ahead.tempC, fold: Math.min, first: Infinity })),
      tempMaxC: spreadOf(byMember(ahead, day, { column: ahead.tempC, fold: Math.max, first: -Infinity })),
      gustMPerS: ahead.gustMPerS.subarray(day.fromHour, day.toHour).reduce((a, b) => Math.max(a, b), 0),
      et0Mm: spreadOf(et0).mid,
      thunderHours: instantsOf(ahead, day, thunder),
    };
  });
}

function byMember(
  hours: HoursReady,
  day: LocalDay,
  of: { column: Float64Array; fold: (total: number, value: number) => number; first: number },
): Float64Array {
  const totals = new Float64Array(hours.memberCount).fill(of.first);
  for (let hour = day.fromHour; hour < day.toHour; hour++) {
    for (let member = 0; member < hours.memberCount; member++) {
      totals[member] = of.fold(totals[member]!, of.column[hour * hours.memberCount + member]!);
    }
  }
  return totals;
}

function instantsOf(hours: HoursReady, day: LocalDay, marked: Uint8Array): string[] {
  const instants: string[] = [];
  for (let hour = day.fromHour; hour < day.toHour; hour++) {
    if (marked[hour]) instants.push(instantOf(hours.startUtcMs + hour * HOUR_MS));
  }
  return instants;
}
