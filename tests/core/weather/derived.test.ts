import { describe, expect, test } from "vitest";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import { dayOutlines } from "../../../core/weather/day-outline.ts";
import { dryWindows } from "../../../core/weather/dry-windows.ts";
import { gustSpells } from "../../../core/weather/gust-spells.ts";
import type { HoursReady } from "../../../core/weather/hours-ready.ts";
import { rainSpells } from "../../../core/weather/rain-spells.ts";
import { coldSpells, hotSpells } from "../../../core/weather/temperature-spells.ts";
import { thunderHours } from "../../../core/weather/thunder.ts";
import { buildMembers, buildReady, buildWeather, NOW_UTC_MS, PAST_DAYS, SITE } from "./build-weather.ts";

const nowHour = PAST_DAYS * 24 + 5;

/** Hours built by hand: two members, so that shares are 0, 0.5 and 1. */
function hoursOf(rainByHour: readonly (readonly [number, number])[]): HoursReady {
  const hourCount = rainByHour.length;
  const flat = (value: number) => new Float64Array(2 * hourCount).fill(value);
  return {
    startUtcMs: NOW_UTC_MS,
    hourCount,
    memberCount: 2,
    tempC: flat(15),
    dewPointC: flat(10),
    rainMm: Float64Array.from(rainByHour.flat()),
    windMPerS: flat(2),
    radiationMjPerM2: flat(0),
    cloudFrac: flat(0.5),
    gustMPerS: new Float64Array(hourCount).fill(4),
    weatherCode: new Float64Array(hourCount).fill(1),
  };
}

describe("thunder", () => {
  test("the hour after the last thunder is still one to stay in", () => {
    const weatherCode = Float64Array.from([3, 95, 3, 3, 99, 96, 61, 0]);
    expect([...thunderHours({ hourCount: 8, weatherCode })]).toEqual([0, 1, 1, 0, 1, 1, 1, 0]);
  });
  test("thunder without rain, and thunder just past, count too", () => {
    const weatherCode = Float64Array.from([17, 3, 91, 3, 90, 100, -1]);
    expect([...thunderHours({ hourCount: 7, weatherCode })]).toEqual([1, 1, 1, 1, 0, 0, 0]);
  });
});

describe("rain spells", () => {
  test("start, end, amount, peak and share of members; a short break does not end one", () => {
    const spells = rainSpells(
      hoursOf([
        [0, 0],
        [2, 0],
        [0, 0],
        [4, 1],
        [0, 0],
        [0, 0],
        [0, 0],
        [0, 0.5],
        [0, 0],
      ]),
    );
    expect(spells.map(({ fromHour, toHour }) => [fromHour, toHour])).toEqual([
      [1, 4],
      [7, 8],
    ]);
    expect(spells[0]).toMatchObject({ shareFrac: 1, rainMm: { mid: 3.5 }, peakMmPerH: { mid: 2.5 } });
    expect(spells[1]).toMatchObject({ shareFrac: 0.5 });
  });
  test("none in dry weather", () => {
    expect(
      rainSpells(
        hoursOf([
          [0, 0.1],
          [0, 0],
        ]),
      ),
    ).toEqual([]);
  });
});

describe("cold, hot and gusty spells", () => {
  const tempC = Float64Array.from(
    { length: 96 },
    (_, hour) => (hour % 24 < 6 ? 2 : 14) - (hour >= 72 ? 0 : 0),
  );
  const nights = { hourCount: 96, memberCount: 1, tempC };
  test("warm noons do not end a cold spell of nights", () => {
    expect(coldSpells(nights, 5)).toMatchObject([
      { fromHour: 0, toHour: 78, shareFrac: 1, extremeC: { mid: 2 } },
    ]);
    expect(coldSpells(nights, 1)).toEqual([]);
  });
  test("hot spells mirror them", () => {
    expect(hotSpells(nights, 10)[0]).toMatchObject({ fromHour: 6, extremeC: { mid: 14 } });
    expect(hotSpells(nights, 20)).toEqual([]);
  });
  test("a lull does not end a blow", () => {
    const gusts = Float64Array.from([5, 15, 8, 8, 18, 5, 5, 5, 5, 16]);
    expect(gustSpells(gusts, 14)).toEqual([
      { fromHour: 1, toHour: 5, strongestMPerS: 18 },
      { fromHour: 9, toHour: 10, strongestMPerS: 16 },
    ]);
  });
});

describe("day outlines", () => {
  const storm = (hour: number) => hour >= nowHour + 30 && hour < nowHour + 33;
  const weather = buildWeather({
    rainMm: (h) => (storm(h) ? 8 : 0),
    weatherCode: (h) => (storm(h) ? 95 : 1),
  });
  const members = buildMembers(weather, 11);
  const days = dayOutlines(buildReady({ ...weather, members }), SITE);

  test("one a local day, from now on; five hours of a last day are none", () => {
    expect(days.map(({ day }) => day)).toEqual([
      "2026-06-08",
      "2026-06-09",
      "2026-06-10",
      "2026-06-11",
      "2026-06-12",
      "2026-06-13",
      "2026-06-14",
    ]);
  });
  test("the stormy day stands out, with the hours to stay in", () => {
    expect(days[1]!.rainShareFrac).toBeGreaterThan(0.6);
    expect(days[3]!.rainShareFrac).toBeLessThan(0.3);
    expect(days[1]!.peakRainMmPerH).toBeGreaterThan(4);
    expect(days[1]!.thunderHours).toEqual([
      "2026-06-09T11:00Z",
      "2026-06-09T12:00Z",
      "2026-06-09T13:00Z",
      "2026-06-09T14:00Z",
    ]);
    expect(days[3]!.thunderHours).toEqual([]);
  });
  test("spreads are in order and the day's evaporation is that of a summer day", () => {
    for (const day of days.slice(0, 7)) {
      for (const spread of [day.rainMm, day.tempMinC, day.tempMaxC]) {
        expect(spread.low).toBeLessThanOrEqual(spread.mid);
        expect(spread.mid).toBeLessThanOrEqual(spread.high);
      }
      expect(day.tempMinC.high).toBeLessThan(day.tempMaxC.low);
      expect(day.gustMPerS).toBe(6);
      expect(day.et0Mm).toBeGreaterThan(3);
      expect(day.et0Mm).toBeLessThan(7);
    }
  });
});

describe("dry windows", () => {
  const storm = (hour: number) => hour >= nowHour + 30 && hour < nowHour + 33;
  const weather = buildWeather({
    rainMm: (h) => (storm(h) ? 8 : 0),
    weatherCode: (h) => (storm(h) ? 95 : 1),
  });
  const ready = buildReady({ ...weather, members: buildMembers(weather, 11) });
  const windows = dryWindows({ ready, site: SITE, settings: DEFAULT_SETTINGS });

  test("none in a thunder hour, none in the dark, none outside working hours, none shorter than two hours", () => {
    const thunder = thunderHours(ready.ahead);
    for (const { from, to } of windows) {
      const hours = (Date.parse(to) - Date.parse(from)) / 3_600_000;
      expect(hours).toBeGreaterThanOrEqual(2);
      const first = (Date.parse(from) - ready.ahead.startUtcMs) / 3_600_000;
      expect([...thunder.subarray(first, first + hours)]).not.toContain(1);
      expect(new Date(from).getUTCHours()).toBeGreaterThanOrEqual(6);
      expect(new Date(to).getUTCHours()).toBeLessThanOrEqual(20);
    }
  });
  test("the day of the storm is cut by it, and the dry days after are counted", () => {
    const morning = windows.find(({ from }) => from.startsWith("2026-06-09"));
    expect(morning?.to.slice(0, 13) === "2026-06-09T11").toBe(true);
    const after = windows.find(({ from }) => from.startsWith("2026-06-10"));
    expect(after!.dryDaysAfter).toBeGreaterThanOrEqual(3);
    expect(after!.dryShareFrac).toBeGreaterThan(0.7);
    expect(after!.hottestHeatIndexC).toBeGreaterThan(20);
    expect(after!.hottestHeatIndexC).toBeLessThan(32);
  });
});
