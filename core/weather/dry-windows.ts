import type { WorkWindow } from "../plan/plan.ts";
import type { Settings } from "../plan/settings.ts";
import { instantOf } from "../site/instant.ts";
import { localDays, localHour } from "../site/local-days.ts";
import type { Site } from "../site/site.ts";
import { sunHours } from "../site/sun-hours.ts";
import { heatIndexC } from "./heat-index.ts";
import type { HoursReady } from "./hours-ready.ts";
import { relativeHumidityFrac } from "./humidity.ts";
import type { WeatherReady } from "./ready.ts";
import { thunderHours } from "./thunder.ts";
import { HOUR_MS } from "./weather.ts";

/** An hour is dry below this, mm: the usual least amount that gauges and forecasts count. Common practice. */
const DRY_BELOW_MM = 0.2;
/** Share of members that must be dry to count on it; chosen by us because potting can be broken off. */
const DRY_SHARE_FRAC = 0.7;
/** Shortest window offered, hours; chosen by us because less does not pay for setting up. */
const LEAST_HOURS = 2;

/** Heat index from which nobody is sent to the potting bench: "extreme caution" begins. [NWS2014, 90 °F] */
const TOO_HOT_C = 32.2;

/**
 * Stretches of daylight within the grower's working hours that are likely dry, free of thunder, not too hot to work in
 * and at least two hours long.
 */
export function dryWindows(input: { ready: WeatherReady; site: Site; settings: Settings }): WorkWindow[] {
  const { ready, site } = input;
  const usable = usableHours(input);
  const windows: WorkWindow[] = [];
  for (const day of localDays(ready.ahead, site.zone)) {
    let from = day.fromHour;
    for (let hour = day.fromHour; hour <= day.toHour; hour++) {
      if (hour < day.toHour && usable[hour]) continue;
      if (hour - from >= LEAST_HOURS) windows.push(windowOf(ready, site, { fromHour: from, toHour: hour }));
      from = hour + 1;
    }
  }
  return windows;
}

function usableHours({ ready, site, settings }: Parameters<typeof dryWindows>[0]): boolean[] {
  const { ahead } = ready;
  const thunder = thunderHours(ahead);
  const sun = sunHours(ahead, site);
  return Array.from({ length: ahead.hourCount }, (_, hour) => {
    const clock = localHour(ahead.startUtcMs + hour * HOUR_MS, site.zone);
    const atWork = clock >= settings.dayStartsHour && clock + 1 <= settings.dayEndsHour;
    return (
      atWork &&
      !thunder[hour] &&
      sun.heightSine[hour]! > 0 &&
      hottestHeatIndexC(ahead, { fromHour: hour, toHour: hour + 1 }) < TOO_HOT_C &&
      dryShareFrac(ahead, hour, hour + 1) >= DRY_SHARE_FRAC
    );
  });
}

function windowOf(ready: WeatherReady, site: Site, span: { fromHour: number; toHour: number }): WorkWindow {
  const { ahead } = ready;
  return {
    from: instantOf(ahead.startUtcMs + span.fromHour * HOUR_MS),
    to: instantOf(ahead.startUtcMs + span.toHour * HOUR_MS),
    dryShareFrac: dryShareFrac(ahead, span.fromHour, span.toHour),
    hottestHeatIndexC: hottestHeatIndexC(ahead, span),
    dryDaysAfter: dryDaysAfter(ready, site, span.toHour),
  };
}

/** Share of members without a wet hour in a span. */
function dryShareFrac(hours: HoursReady, fromHour: number, toHour: number): number {
  let dry = 0;
  for (let member = 0; member < hours.memberCount; member++) {
    let wet = false;
    for (let hour = fromHour; hour < toHour; hour++) {
      if (hours.rainMm[hour * hours.memberCount + member]! >= DRY_BELOW_MM) wet = true;
    }
    if (!wet) dry++;
  }
  return dry / hours.memberCount;
}

/** Highest of the members' means by hour. */
function hottestHeatIndexC(hours: HoursReady, span: { fromHour: number; toHour: number }): number {
  let hottest = -Infinity;
  for (let hour = span.fromHour; hour < span.toHour; hour++) {
    let total = 0;
    for (let member = 0; member < hours.memberCount; member++) {
      const i = hour * hours.memberCount + member;
      const air = { tempC: hours.tempC[i]!, dewPointC: Math.min(hours.dewPointC[i]!, hours.tempC[i]!) };
      total += heatIndexC(air.tempC, relativeHumidityFrac(air));
    }
    hottest = Math.max(hottest, total / hours.memberCount);
  }
  return hottest;
}

/**
 * Whole local days after the one of the window that are dry throughout in enough members, until the first that is not;
 * none when the rest of its own day is not.
 */
function dryDaysAfter({ ahead }: WeatherReady, site: Site, toHour: number): number {
  const isDry = (fromHour: number, untilHour: number) =>
    dryShareFrac(ahead, fromHour, untilHour) >= DRY_SHARE_FRAC;
  const days = localDays(ahead, site.zone);
  const own = days.find((day) => day.toHour >= toHour);
  if (own === undefined || !isDry(toHour, own.toHour)) return 0;
  const after = days.filter((day) => day.fromHour >= own.toHour && day.toHour - day.fromHour >= 23);
  const firstWet = after.findIndex((day) => !isDry(day.fromHour, day.toHour));
  return firstWet < 0 ? after.length : firstWet;
}
