import { describe, expect, test } from "vitest";
import { bridgeShortGaps } from "../../../core/weather/ladder/bridge.ts";
import { fillCloud } from "../../../core/weather/ladder/fill-cloud.ts";
import { settleHours } from "../../../core/weather/ladder/settle-hours.ts";
import { workingHours } from "../../../core/weather/ladder/working-hours.ts";
import { coldSpells, hotSpells } from "../../../core/weather/temperature-spells.ts";
import type { Weather } from "../../../core/weather/weather.ts";
import { buildMembers, buildWeather, NOW_UTC_MS, PAST_DAYS, SITE } from "./build-weather.ts";

const unknown = () => Number.NaN;
const nowHour = PAST_DAYS * 24 + 5;
const settle = (weather: Weather, site = SITE) =>
  settleHours(weather, site, { nowUtcMs: NOW_UTC_MS, horizonHours: 72 });

describe("holes bridged on a straight line", () => {
  const NONE = Number.NaN;
  test("three hours between 10 and 18 are 12, 14 and 16", () => {
    expect([...bridgeShortGaps(Float64Array.from([10, NONE, NONE, NONE, 18]), 3)]).toEqual([
      10, 12, 14, 16, 18,
    ]);
  });
  test("one hour more than is allowed, and holes at the ends, stay unknown", () => {
    const column = Float64Array.from([NONE, 10, NONE, NONE, NONE, 18, NONE]);
    expect([...bridgeShortGaps(column, 2)]).toEqual([NONE, 10, NONE, NONE, NONE, 18, NONE]);
  });
});

describe("cloud behind the sun", () => {
  // Allen et al. (1998), FAO-56 example 19, read in source: N'Diaye on day 274, the hour from 15 UTC has 3.543 MJ/m2
  // above the air. Eq. 35 turned round: cloud = 1 - (Rs/Ra - 0.25) / 0.5, held to 0 to 1.
  const NDIAYE = { ...SITE, latDeg: 16 + 13 / 60, lonDeg: -16.25, elevationM: 8 };
  const RA_PRINTED = 3.543;
  const cloudAt15 = (radiationMjPerM2: number) => {
    const plain = buildWeather({
      cloudFrac: unknown,
      weatherCode: unknown,
      radiationMjPerM2: () => radiationMjPerM2,
    });
    const work = workingHours({ ...plain, startUtcMs: Date.UTC(2026, 9, 1) }, NDIAYE, {
      nowHour: 0,
      hourCount: 24,
    });
    fillCloud(work);
    return work.columns.cloudFrac[15]!;
  };
  test.each([
    { what: "the day of the example", sun: 2.45, cloud: 0.117 },
    { what: "half of what is above", sun: 0.5 * RA_PRINTED, cloud: 0.5 },
    { what: "a tenth: all covered", sun: 0.1 * RA_PRINTED, cloud: 1 },
    { what: "nine tenths: none", sun: 0.9 * RA_PRINTED, cloud: 0 },
  ])("$what", ({ sun, cloud }) => {
    expect(Math.abs(cloudAt15(sun) - cloud)).toBeLessThan(0.001);
  });
});

describe("air that is not told", () => {
  test("wind is 2 m/s at 2 m, for which FAO-56 Annex 2 Table 2.9 prints a factor of 0.748 from 10 m", () => {
    const { windMPerS } = settle(buildWeather({ windMPerS: unknown })).columns;
    expect(Math.abs(windMPerS[nowHour]! * 0.748 - 2)).toBeLessThan(0.002);
  });
  test("a gust is 1.6 times the wind, and one that is told stays", () => {
    const wind = { windMPerS: () => 5 };
    expect(settle(buildWeather({ ...wind, gustMPerS: unknown })).columns.gustMPerS[nowHour]).toBeCloseTo(
      8,
      9,
    );
    expect(settle(buildWeather(wind)).columns.gustMPerS[nowHour]).toBe(6);
  });
  test("the dew point lies 3 degrees below the lowest of the 24 hours: 13 °C there, so 10", () => {
    const { dewPointC } = settle(buildWeather({ dewPointC: unknown })).columns;
    expect(dewPointC[nowHour + 6]).toBeCloseTo(10, 9);
  });
});

describe("temperature that is not told", () => {
  test("from the same clock hour, a day away with weight 1/2 and two days with 1/3: 10 and 20 give 14", () => {
    const hole = 60;
    const known = new Map([
      [hole - 24, 10],
      [hole + 48, 20],
    ]);
    const weather = buildWeather({ tempC: (hour) => known.get(hour) ?? Number.NaN });
    expect(settle(weather).columns.tempC[hole]).toBeCloseTo(14, 9);
  });

  // The sun passes 90 degrees east six hours before Greenwich; the rule's warmest time is 14:30 by the sun.
  test.each([
    { lonDeg: 0, warmestUtcHour: 14 },
    { lonDeg: 90, warmestUtcHour: 8 },
    { lonDeg: -90, warmestUtcHour: 20 },
  ])("nothing known at all at $lonDeg degrees: warmest in the hour from $warmestUtcHour UTC", (row) => {
    const weather = buildWeather({ tempC: unknown, rainMm: unknown });
    const day = settle(weather, { ...SITE, lonDeg: row.lonDeg }).columns.tempC.subarray(0, 24);
    expect(day.indexOf(Math.max(...day))).toBe(row.warmestUtcHour);
  });

  test("beside a short forecast only the hours without one are normal", () => {
    const told = (hour: number) => (hour < nowHour + 10 ? 30 : Number.NaN);
    const { columns, knownHours, hourCount } = settle(buildWeather({ tempC: told, rainMm: () => 1 }));
    expect({ knownHours, hourCount }).toEqual({ knownHours: 10, hourCount: nowHour + 72 });
    expect([...columns.rainMm.subarray(nowHour - 2, nowHour + 12)]).toEqual([
      ...new Array<number>(12).fill(1),
      0,
      0,
    ]);
    expect(columns.tempC.subarray(nowHour + 10).every((tempC) => Math.abs(tempC - 30) < 1e-9)).toBe(true);
  });
});

test("the mean of the ensemble reaches as far as its members and no farther", () => {
  const weather = buildWeather({ days: 2 });
  const members = buildMembers(weather, 2, { tempC: (hour, member) => hour + 10 * member });
  const { memberMean } = workingHours({ ...weather, members }, SITE, { nowHour: 0, hourCount: 50 });
  expect([...memberMean!.tempC.subarray(46)]).toEqual([51, 52, Number.NaN, Number.NaN]);
  const cut = workingHours({ ...weather, members }, SITE, { nowHour: 0, hourCount: 3 });
  expect([...cut.memberMean!.tempC]).toEqual([5, 6, 7]);
});

describe("the extreme of a spell", () => {
  const courses = { hourCount: 3, memberCount: 2, tempC: Float64Array.from([4, 4, 1, 2, 3, 3]) };
  test("is each member's own coldest hour, wherever in the spell: 1 and 2", () => {
    expect(coldSpells(courses, 5)).toMatchObject([{ fromHour: 0, toHour: 3, extremeC: { mid: 1.5 } }]);
  });
  test("or its warmest: 30 and 34", () => {
    const hot = { ...courses, tempC: Float64Array.from([25, 25, 30, 34, 26, 26]) };
    expect(hotSpells(hot, 20)).toMatchObject([{ fromHour: 0, toHour: 3, extremeC: { mid: 32 } }]);
  });
});
