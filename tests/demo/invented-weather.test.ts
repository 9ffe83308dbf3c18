import { describe, expect, it } from "vitest";
import { localHour } from "../../core/site/local-days.ts";
import { HARBOUR_SITE } from "../../demo/harbour-site.ts";
import { inventedWeather } from "../../demo/invented-weather.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const { zone } = HARBOUR_SITE;

/** Mornings and late evenings, through the year. */
const NOWS = [
  Date.UTC(2031, 0, 14, 6, 30),
  Date.UTC(2031, 3, 2, 23, 50),
  Date.UTC(2032, 1, 29, 0, 10),
  Date.UTC(2031, 8, 21, 14, 5),
];

/** Stamps of a local day relative to today, as indices, with the local hour of each. */
function stampsOfDay(nowUtcMs: number, startUtcMs: number, day: number) {
  const midnightUtcMs = nowUtcMs - localHour(nowUtcMs, zone) * HOUR_MS + day * DAY_MS;
  const first = Math.round((midnightUtcMs - startUtcMs) / HOUR_MS);
  return Array.from({ length: 24 }, (_, hour) => ({ hour, stamp: first + hour }));
}

const deviation = (values: readonly number[]) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
};

describe.each(NOWS)("the invented weather at %i", (nowUtcMs) => {
  const weather = inventedWeather(nowUtcMs, 20);
  const { hours, members, startUtcMs } = weather;
  const day = (offset: number) => stampsOfDay(nowUtcMs, startUtcMs, offset);
  const at = (column: readonly number[], offset: number) => day(offset).map(({ stamp }) => column[stamp]!);

  it("knows every hour of ninety past days and two weeks ahead, within what air can do", () => {
    const from = Math.round((nowUtcMs - 92 * DAY_MS - startUtcMs) / HOUR_MS);
    const to = Math.round((nowUtcMs + 14 * DAY_MS - startUtcMs) / HOUR_MS);
    for (let i = from; i < to; i++) {
      expect(hours.dewPointC[i]).toBeLessThanOrEqual(hours.tempC[i]!);
      expect(hours.gustMPerS[i]).toBeGreaterThanOrEqual(hours.windMPerS[i]!);
      expect(hours.windMPerS[i]).toBeGreaterThan(0);
      expect(hours.rainMm[i]).toBeGreaterThanOrEqual(0);
      // The solar constant, 1361 W/m2 (Kopp and Lean 2011), bounds any sun on the ground.
      expect(hours.radiationWPerM2[i]).toBeGreaterThanOrEqual(0);
      expect(hours.radiationWPerM2[i]).toBeLessThan(1361);
      expect(hours.cloudFrac[i]).toBeLessThanOrEqual(1);
    }
  });

  it("is hot and dry today, thunders tomorrow afternoon, and has a clear calm cold night within the week", () => {
    expect(Math.max(...at(hours.tempC, 0))).toBeGreaterThan(31);
    expect(at(hours.rainMm, 0).every((mm) => mm === 0)).toBe(true);
    const thunder = day(1).filter(({ stamp }) => hours.weatherCode[stamp]! >= 95);
    expect(thunder.length).toBeGreaterThanOrEqual(3);
    expect(thunder.every(({ hour }) => hour >= 13 && hour <= 19)).toBe(true);
    expect(Math.max(...thunder.map(({ stamp }) => hours.rainMm[stamp]!))).toBeGreaterThan(8);
    expect(Math.max(...thunder.map(({ stamp }) => hours.gustMPerS[stamp]!))).toBeGreaterThan(14);
    const nights = [3, 4, 5, 6].flatMap((offset) => day(offset).filter(({ hour }) => hour < 8));
    const coldest = nights.reduce((a, b) => (hours.tempC[b.stamp]! < hours.tempC[a.stamp]! ? b : a));
    expect(hours.tempC[coldest.stamp]).toBeLessThan(6.5);
    expect(hours.cloudFrac[coldest.stamp]).toBeLessThan(0.2);
    expect(hours.windMPerS[coldest.stamp]).toBeLessThan(1.5);
  });

  it("has 31 members whose spread grows with the days ahead and of which some miss the storm", () => {
    expect(members).toHaveLength(31);
    const spread = (offset: number) => {
      const stamp = day(offset)[9]!.stamp;
      return deviation(members.map(({ tempC }) => tempC[stamp]!));
    };
    expect(spread(1)).toBeLessThan(spread(5));
    expect(spread(5)).toBeLessThan(6);
    const stormMm = members.map(({ rainMm }) =>
      day(1)
        .concat(day(2))
        .reduce((sum, { stamp }) => sum + rainMm[stamp]!, 0),
    );
    expect(Math.min(...stormMm)).toBeLessThan(0.75 * Math.max(...stormMm));
    expect(stormMm.filter((mm) => mm > 10).length).toBeGreaterThan(24);
  });

  it("is the same for the same seed and another for another", () => {
    expect(inventedWeather(nowUtcMs, 20)).toEqual(weather);
    expect(inventedWeather(nowUtcMs, 21).members[3]).not.toEqual(weather.members[3]);
  });
});
