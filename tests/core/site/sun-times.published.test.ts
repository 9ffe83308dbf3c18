import * as Astronomy from "astronomy-engine";
import { DateTime } from "luxon";
import { describe, expect, test } from "vitest";
import type { CalendarDay } from "../../../core/site/site.ts";
import { type SunTimes, sunTimes } from "../../../core/site/sun-times.ts";
import { SITE } from "../weather/build-weather.ts";

type Risen = Extract<SunTimes, { riseUtcMs: number }>;

function risen(day: string, place: { latDeg: number; lonDeg: number; zone: string }): Risen {
  const times = sunTimes(day as CalendarDay, { ...SITE, ...place });
  if (!("riseUtcMs" in times)) throw new Error(`no sunrise on ${day}`);
  return times;
}

// Outside truth: astronomy-engine 2 for the sun and luxon for the zones. Clocks near and far from the sun, both sides
// of the date line, both hemispheres, and days on which the clocks change.
const PLACES = [
  { zone: "America/Toronto", latDeg: 43.7, lonDeg: -79.4, day: "2026-03-08" },
  { zone: "Europe/Dublin", latDeg: 53.3, lonDeg: -6.3, day: "2026-10-25" },
  { zone: "Asia/Kolkata", latDeg: 19.1, lonDeg: 72.9, day: "2026-06-21" },
  { zone: "Asia/Shanghai", latDeg: 39.5, lonDeg: 76, day: "2026-12-21" },
  { zone: "Pacific/Auckland", latDeg: -36.8, lonDeg: 174.8, day: "2026-09-27" },
  { zone: "Pacific/Kiritimati", latDeg: 1.9, lonDeg: -157.5, day: "2026-02-11" },
  { zone: "Pacific/Honolulu", latDeg: 21.3, lonDeg: -157.9, day: "2026-11-03" },
  { zone: "America/Punta_Arenas", latDeg: -53.2, lonDeg: -70.9, day: "2026-12-21" },
] as const;

describe("sunrise, noon and sunset by the local day", () => {
  test.each(PLACES)("$zone on $day", ({ day, ...place }) => {
    const ours = risen(day, place);
    const observer = new Astronomy.Observer(place.latDeg, place.lonDeg, 0);
    const midnight = DateTime.fromISO(day, { zone: place.zone }).toJSDate();
    const noon = Astronomy.SearchHourAngle(Astronomy.Body.Sun, observer, 0, midnight).time.date;
    const rise = Astronomy.SearchRiseSet(Astronomy.Body.Sun, observer, 1, midnight, 1)!.date;
    const set = Astronomy.SearchRiseSet(Astronomy.Body.Sun, observer, -1, noon, 1)!.date;
    expect(Math.abs(ours.noonUtcMs - noon.getTime())).toBeLessThan(3000);
    // Within 60 degrees of the equator 0.01 degrees of height are 8 s at most.
    expect(Math.abs(ours.riseUtcMs - rise.getTime())).toBeLessThan(8000);
    expect(Math.abs(ours.setUtcMs - set.getTime())).toBeLessThan(8000);
    for (const utcMs of [ours.riseUtcMs, ours.noonUtcMs, ours.setUtcMs]) {
      expect(DateTime.fromMillis(utcMs, { zone: place.zone }).toISODate()).toBe(day);
    }
  });

  test("no place was dropped", () => {
    expect(PLACES.length).toBe(8);
  });
});

// By hand: the sun turns 15 degrees an hour, so that on the equator at an equinox rise and set lie 6 h and 0.833 / 15 h
// = 3 min 20 s from noon by the sun. Its clock gains 18 s a day on ours then, 9 s between rise and set. The equinox of
// March 2026 is on the 20th (common knowledge of almanacs).
test("the equator at the equinox: 12 h 6 min 31 s of sun, noon in the middle", () => {
  const { riseUtcMs, noonUtcMs, setUtcMs } = risen("2026-03-20", { latDeg: 0, lonDeg: 0, zone: "UTC" });
  expect(Math.abs(setUtcMs - riseUtcMs - (12 * 3600 + 391) * 1000)).toBeLessThan(3000);
  expect(Math.abs(noonUtcMs - (riseUtcMs + setUtcMs) / 2)).toBeLessThan(3000);
});

// The equation of time at its four extremes, from memory of almanacs: -14 min 14 s on 11 February, +3 min 39 s on 14 May,
// -6 min 33 s on 26 July, +16 min 26 s on 3 November; noon at Greenwich is 12:00 less it. They shift by seconds a year.
test.each([
  { day: "2026-02-11", noon: "12:14:14" },
  { day: "2026-05-14", noon: "11:56:21" },
  { day: "2026-07-26", noon: "12:06:33" },
  { day: "2026-11-03", noon: "11:43:34" },
])("noon at Greenwich on $day: $noon", ({ day, noon }) => {
  const { noonUtcMs } = risen(day, { latDeg: 51.5, lonDeg: 0, zone: "UTC" });
  expect(Math.abs(noonUtcMs - Date.parse(`${day}T${noon}Z`))).toBeLessThan(8000);
});
