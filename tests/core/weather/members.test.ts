import { describe, expect, test } from "vitest";
import { sunHours } from "../../../core/site/sun-hours.ts";
import type { HoursReady } from "../../../core/weather/hours-ready.ts";
import { seededRandom } from "../../../core/weather/seeded-random.ts";
import {
  buildMembers,
  buildReady,
  buildWeather,
  mean,
  NOW_UTC_MS,
  PAST_DAYS,
  SITE,
  standardDeviation,
} from "./build-weather.ts";

const nowHour = PAST_DAYS * 24 + 5;
/** From now (5 o'clock) to an hour of the day so many days on. */
const aheadHour = (day: number, clock: number) => 24 * day + clock - 5;
const membersAt = (hours: HoursReady, column: Float64Array, hour: number) =>
  column.subarray(hour * hours.memberCount, (hour + 1) * hours.memberCount);

function dayRain(hours: HoursReady, day: number): number[] {
  const sums = new Array<number>(hours.memberCount).fill(0);
  for (let hour = aheadHour(day, 0); hour < aheadHour(day + 1, 0); hour++) {
    membersAt(hours, hours.rainMm, hour).forEach((mm, m) => {
      sums[m]! += mm;
    });
  }
  return sums;
}

const shareFrom = (values: readonly number[], mm: number) =>
  values.filter((value) => value >= mm).length / values.length;

describe("a single forecast", () => {
  const { ahead } = buildReady(buildWeather());

  test("becomes as many courses as asked, all known and possible", () => {
    expect(ahead.memberCount).toBe(51);
    const clear = sunHours(ahead, SITE).clearSkyMjPerM2;
    for (const name of [
      "tempC",
      "dewPointC",
      "rainMm",
      "windMPerS",
      "radiationMjPerM2",
      "cloudFrac",
    ] as const) {
      expect(ahead[name].length).toBe(168 * 51);
      expect(ahead[name].every(Number.isFinite), name).toBe(true);
    }
    for (let i = 0; i < ahead.tempC.length; i++) {
      expect(ahead.dewPointC[i]!).toBeLessThanOrEqual(ahead.tempC[i]!);
      expect(ahead.rainMm[i]!).toBeGreaterThanOrEqual(0);
      expect(ahead.windMPerS[i]!).toBeGreaterThan(0);
      expect(ahead.radiationMjPerM2[i]!).toBeGreaterThanOrEqual(0);
      expect(ahead.radiationMjPerM2[i]!).toBeLessThanOrEqual(
        Math.max(2.6, 1.05 * clear[Math.floor(i / 51)]!),
      );
    }
  });

  test("lies around the forecast and widens with the days", () => {
    const dawn = [1, 3, 6].map((day) => membersAt(ahead, ahead.tempC, aheadHour(day, 4)));
    for (const temps of dawn) expect(Math.abs(mean(temps) - 14)).toBeLessThan(0.8);
    const widths = dawn.map((temps) => standardDeviation(temps));
    expect(widths[0]!).toBeLessThan(widths[1]!);
    expect(widths[1]!).toBeLessThan(widths[2]!);
  });

  test("same seed, same bytes; another seed, other courses", () => {
    expect(buildReady(buildWeather()).ahead).toEqual(ahead);
    expect(buildReady(buildWeather(), { seed: 2 }).ahead.tempC).not.toEqual(ahead.tempC);
  });

  test("a plan an hour later draws the same errors for the same hours", () => {
    const later = buildReady(buildWeather(), { nowUtcMs: NOW_UTC_MS + 3_600_000 }).ahead;
    const day = aheadHour(3, 12);
    const now = membersAt(ahead, ahead.tempC, day);
    const then = membersAt(later, later.tempC, day - 1);
    then.forEach((temp, m) => {
      expect(temp).toBeCloseTo(now[m]!, 6);
    });
  });

  test("an older forecast is less sure of the same hour", () => {
    const old = buildReady(buildWeather({ fetchedUtcMs: NOW_UTC_MS - 3 * 86_400_000 })).ahead;
    const hour = aheadHour(2, 4);
    expect(standardDeviation(membersAt(old, old.tempC, hour))).toBeGreaterThan(
      standardDeviation(membersAt(ahead, ahead.tempC, hour)),
    );
  });

  test("a dry forecast turns wet now and then, in spells of a few hours", () => {
    const wet = [0, 1, 2, 3, 4, 5].flatMap((day) => dayRain(ahead, day + 1));
    const share = shareFrom(wet, 0.25);
    expect(share).toBeGreaterThan(0.02);
    expect(share).toBeLessThan(0.25);
    const wetHours = ahead.rainMm.filter((mm) => mm > 0).length;
    expect(wetHours / wet.filter((mm) => mm > 0).length).toBeLessThan(8);
  });

  test("a wet forecast turns dry now and then, and keeps its hours otherwise", () => {
    const shower = (hour: number) => (hour % 24 >= 13 && hour % 24 < 16 && hour >= nowHour + 19 ? 5 : 0);
    const wetWeather = buildReady(buildWeather({ rainMm: (hour) => shower(hour) })).ahead;
    const tomorrow = dayRain(wetWeather, 1);
    expect(shareFrom(tomorrow, 1)).toBeGreaterThan(0.7);
    expect(shareFrom(tomorrow, 1)).toBeLessThan(1);
    const atTwo = mean(membersAt(wetWeather, wetWeather.rainMm, aheadHour(1, 14)));
    const atFour = mean(membersAt(wetWeather, wetWeather.rainMm, aheadHour(1, 4)));
    expect(atTwo).toBeGreaterThan(5 * atFour);
  });

  test("members that are wetter are gloomier", () => {
    const mixed = buildReady(buildWeather({ rainMm: (hour) => (hour % 24 === 10 ? 4 : 0) }), {
      cloudSize: 200,
    }).ahead;
    const rain = dayRain(mixed, 4);
    const sun = new Array<number>(200).fill(0);
    for (let hour = aheadHour(4, 0); hour < aheadHour(5, 0); hour++) {
      membersAt(mixed, mixed.radiationMjPerM2, hour).forEach((mj, m) => {
        sun[m]! += mj;
      });
    }
    const wettest = sun.filter((_, m) => rain[m]! >= 6);
    const driest = sun.filter((_, m) => rain[m]! < 0.25);
    expect(wettest.length).toBeGreaterThan(10);
    expect(mean(wettest)).toBeLessThan(mean(driest));
  });
});

describe("a real ensemble", () => {
  const random = seededRandom(3);
  const offsets = Array.from({ length: 20 }, () => random.normal());

  test("too narrow: what published errors say is missing is added", () => {
    const weather = buildWeather();
    const narrow = buildMembers(weather, 20, {
      tempC: (hour, m) => weather.hours.tempC[hour]! + 0.5 * offsets[m]!,
    });
    const { ahead } = buildReady({ ...weather, members: narrow }, { cloudSize: 200 });
    const spread = standardDeviation(membersAt(ahead, ahead.tempC, aheadHour(2, 4)));
    // Published 1.6 °C for the minimum at two days, and 1 °C of the place.
    expect(spread).toBeGreaterThan(1.5);
    expect(spread).toBeLessThan(2.3);
  });

  test("wide enough: each member keeps its own course but for the place", () => {
    const weather = buildWeather();
    const wide = buildMembers(weather, 20, {
      tempC: (hour, m) => weather.hours.tempC[hour]! + 5 * offsets[m]!,
    });
    const { ahead } = buildReady({ ...weather, members: wide }, { cloudSize: 20 });
    const temps = membersAt(ahead, ahead.tempC, aheadHour(2, 4));
    const middle = mean(offsets);
    temps.forEach((temp, m) => {
      const steady = temp - 14 - 5 * (offsets[m]! - middle);
      expect(Math.abs(steady)).toBeLessThan(4);
    });
    expect(standardDeviation(temps)).toBeGreaterThan(4);
  });

  test("smaller than the cloud: members are used in turn and still differ", () => {
    const weather = buildWeather();
    const ready = buildReady({ ...weather, members: buildMembers(weather, 7) });
    expect(ready.realMemberCount).toBe(7);
    const temps = membersAt(ready.ahead, ready.ahead.tempC, 30);
    expect(new Set(temps).size).toBe(51);
  });

  test("ends before the horizon: the rest is drawn and told", () => {
    const weather = buildWeather();
    const short = buildMembers(weather, 5, { rainMm: (hour) => (hour < nowHour + 84 ? 0 : Number.NaN) });
    const ready = buildReady({ ...weather, members: short });
    expect(ready.standIns).toMatchObject([{ quantity: "members", shareOfHoursFrac: 0.5 }]);
    expect(ready.ahead.rainMm.every(Number.isFinite)).toBe(true);
  });
});
