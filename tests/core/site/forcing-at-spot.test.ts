import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { forcingAtSpot } from "../../../core/site/forcing-at-spot.ts";
import { nightDropC } from "../../../core/site/night-drop.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { sunShareByHour } from "../../../core/site/spot-light.ts";
import { buildReady, buildWeather, OPEN_SPOT, PAST_DAYS, SITE } from "../weather/build-weather.ts";

const rainy = (hour: number) => (hour % 24 === 15 ? 6 : 0);
const { past } = buildReady(buildWeather({ rainMm: rainy }));
const at = (change: Partial<Spot> = {}) => forcingAtSpot(past, SITE, { ...OPEN_SPOT, ...change });
const total = (column: Float64Array) => column.reduce((a, b) => a + b, 0);
const dayHours = PAST_DAYS * 24;

describe("what a spot lets through", () => {
  const open = at();

  test("in the open all of it", () => {
    expect(total(open.rainMm)).toBeCloseTo(total(past.rainMm), 9);
    expect(total(open.lightMjPerM2)).toBeCloseTo(total(past.radiationMjPerM2), 9);
    expect(open.tempC).toEqual(past.tempC);
    expect(open.gustMPerS[0]).toBeCloseTo(6 * 0.748, 2);
    expect(open).toMatchObject({ hourCount: past.hourCount, memberCount: 1, startUtcMs: past.startUtcMs });
  });

  test("a wall to the west shades the afternoon and leaves the morning", () => {
    const walled = at({ shade: [{ fromHour: 14, toHour: 21, sunFrac: 0 }] });
    expect(walled.lightMjPerM2[10]).toBe(open.lightMjPerM2[10]);
    expect(walled.lightMjPerM2[16]!).toBeLessThan(0.5 * open.lightMjPerM2[16]!);
    expect(walled.lightMjPerM2[16]!).toBeGreaterThan(0);
    expect(walled.et0Mm[16]!).toBeLessThan(open.et0Mm[16]!);
    expect(walled.et0Mm[10]).toBe(open.et0Mm[10]);
  });

  test("in deep shade evaporation falls by less than the light: wind and dry air go on drawing", () => {
    const shaded = at({ sunFrac: 0.1, skyFrac: 0.3 });
    const light = total(shaded.lightMjPerM2) / total(open.lightMjPerM2);
    const et0 = total(shaded.et0Mm) / total(open.et0Mm);
    expect(light).toBeLessThan(0.3);
    expect(et0).toBeGreaterThan(1.5 * light);
    expect(et0).toBeLessThan(1);
  });

  test("indoors no rain; a heated room never below its heating; nights milder than outside", () => {
    const heated = at({ kind: "indoors", heatedToC: 19, skyFrac: 0.1, sunFrac: 0.3, windFrac: 0 });
    expect(total(heated.rainMm)).toBe(0);
    expect(heated.tempC.every((temp) => temp >= 19)).toBe(true);
    expect(heated.plantTempC).toEqual(heated.tempC);
    const shed = at({ kind: "indoors", nightWarmthC: 2 });
    const coldest = (column: Float64Array) => column.reduce((a, b) => Math.min(a, b));
    const warmest = (column: Float64Array) => column.reduce((a, b) => Math.max(a, b));
    expect(coldest(shed.tempC)).toBeGreaterThanOrEqual(coldest(past.tempC) + 2);
    expect(warmest(shed.tempC)).toBeLessThan(warmest(past.tempC));
  });

  test("under a roof the described edge decides, else the spot's share of rain", () => {
    expect(total(at({ kind: "roofed", rainFrac: 0.25 }).rainMm)).toBeCloseTo(0.25 * total(past.rainMm), 9);
    const edge = at({ kind: "roof-edge", rainFrac: 1, roofEdge: { heightM: 2.2, behindM: 0.2 } });
    expect(total(edge.rainMm)).toBeGreaterThan(0);
    expect(total(edge.rainMm)).toBeLessThan(0.5 * total(past.rainMm));
  });
});

describe("leaf and stem", () => {
  const night = 24 + 3;
  const noon = 24 + 12;

  test("cool under an open clear calm sky, by night only", () => {
    const still = buildReady(buildWeather({ windMPerS: () => 1, cloudFrac: () => 0.1 })).past;
    const open = forcingAtSpot(still, SITE, OPEN_SPOT);
    expect(open.plantTempC[night]).toBeCloseTo(open.tempC[night]! - 2, 9);
    expect(open.plantTempC[noon]).toBe(open.tempC[noon]);
    const eave = forcingAtSpot(still, SITE, { ...OPEN_SPOT, kind: "roof-edge", nightWarmthC: 1.5 });
    expect(eave.plantTempC[night]).toBeCloseTo(eave.tempC[night]! + 1.5, 9);
  });

  test("what a wall gives back is still felt in the first hours of sun, when the air is coldest, and not at noon", () => {
    const still = buildReady(buildWeather({})).past;
    const wall = forcingAtSpot(still, SITE, { ...OPEN_SPOT, kind: "roofed", nightWarmthC: 3 });
    const gain = (hour: number) => wall.plantTempC[hour]! - wall.tempC[hour]!;
    const day = Array.from({ length: 24 }, (_, hour) => gain(24 + hour));
    expect(day.some((warmth) => warmth > 0 && warmth < 3)).toBe(true);
    expect(gain(noon)).toBe(0);
    expect(gain(night)).toBeCloseTo(3, 9);
  });

  // Leuning and Cremer (1988): leaves 1 to 3 °C below the air on clear nights; Snyder and de Melo-Abreu (2005): radiation
  // nights have winds under 2 m/s and no cloud. Both read in source; the slopes between are ours.
  test.each([
    { cloudFrac: 0, windMPerS: 1, least: 1, most: 3 },
    { cloudFrac: 0.5, windMPerS: 1, least: 0.5, most: 1.5 },
    { cloudFrac: 1, windMPerS: 1, least: 0, most: 0 },
    { cloudFrac: 0, windMPerS: 4, least: 0, most: 0 },
  ])("cloud $cloudFrac, wind $windMPerS", ({ cloudFrac, windMPerS, least, most }) => {
    const drop = nightDropC({ cloudFrac, windMPerS, skyFrac: 1 });
    expect(drop).toBeGreaterThanOrEqual(least);
    expect(drop).toBeLessThanOrEqual(most);
  });
});

describe("shade windows", () => {
  const axis = { startUtcMs: Date.UTC(2026, 5, 1), hourCount: 24, zone: "UTC" };
  test("a window that cuts an hour counts for its part, and may run over midnight", () => {
    const share = sunShareByHour(axis, {
      sunFrac: 0.8,
      shade: [{ fromHour: 15.5, toHour: 2, sunFrac: 0.2 }],
    });
    expect(share[14]).toBe(0.8);
    expect(share[15]).toBeCloseTo(0.5, 9);
    expect(share[23]).toBeCloseTo(0.2, 9);
    expect(share[1]).toBeCloseTo(0.2, 9);
    expect(share[2]).toBeCloseTo(0.8, 9);
  });
  test("windows go by the local clock", () => {
    const there = sunShareByHour(
      { ...axis, zone: "Asia/Kolkata" },
      { sunFrac: 1, shade: [{ fromHour: 12.5, toHour: 13.5, sunFrac: 0 }] },
    );
    expect(there.indexOf(0)).toBe(7);
  });
});

describe("properties", () => {
  const frac = fc.double({ min: 0, max: 1, noNaN: true });
  const anySpot = fc.record({
    kind: fc.constantFrom("open", "roof-edge", "roofed", "indoors"),
    skyFrac: frac,
    sunFrac: frac,
    windFrac: frac,
    rainFrac: frac,
    nightWarmthC: fc.double({ min: 0, max: 4, noNaN: true }),
  }) as fc.Arbitrary<Partial<Spot>>;

  test("every column is known, evaporation and rain are never negative, no spot gets more rain than falls", () => {
    fc.assert(
      fc.property(anySpot, (change) => {
        const forcing = at(change);
        for (const name of ["et0Mm", "rainMm", "tempC", "plantTempC", "lightMjPerM2", "gustMPerS"] as const) {
          expect(forcing[name].every(Number.isFinite), name).toBe(true);
        }
        expect(forcing.et0Mm.every((mm) => mm >= 0)).toBe(true);
        expect(forcing.rainMm.every((mm, i) => mm >= 0 && mm <= past.rainMm[i]!)).toBe(true);
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  test("more sun never lowers the evaporation of the days", () => {
    fc.assert(
      fc.property(anySpot, frac, (change, more) => {
        const ofDays = (spot: Partial<Spot>) => total(at(spot).et0Mm.subarray(0, dayHours));
        const sunny = { ...change, sunFrac: Math.min(1, change.sunFrac! + more) };
        expect(ofDays(sunny)).toBeGreaterThanOrEqual(ofDays(change) - 1e-9);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  test("a longer run begins with the same hours as a shorter one", () => {
    const short = { ...past, hourCount: 60 };
    for (const name of [
      "tempC",
      "dewPointC",
      "rainMm",
      "windMPerS",
      "radiationMjPerM2",
      "cloudFrac",
    ] as const) {
      Object.assign(short, { [name]: past[name].slice(0, 60) });
    }
    Object.assign(short, {
      gustMPerS: past.gustMPerS.slice(0, 60),
      weatherCode: past.weatherCode.slice(0, 60),
    });
    expect(forcingAtSpot(short, SITE, OPEN_SPOT).et0Mm).toEqual(at().et0Mm.slice(0, 60));
  });
});
