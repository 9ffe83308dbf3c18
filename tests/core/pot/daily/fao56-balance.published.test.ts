import { describe, expect, it } from "vitest";
import { runHours } from "../../../../core/pot/balance/run-hours.ts";
import { evaporationDay } from "../../../../core/pot/daily/evaporation-day.ts";
import { rootZoneDay, rootZoneOf } from "../../../../core/pot/daily/root-zone-day.ts";
import { plainTank } from "../balance/plain-tank.ts";
import { forcing } from "../build-pot.ts";

// Source of all: FAO56, chapters 7 and 8, worked examples as printed. Status: read-in-source.

/** Example 31: bare soil drying. Columns: day, De start, Kr, Ke, Ke ETo, De end, ETc; all mm but Kr and Ke. */
const EXAMPLE_31 = [
  [1, 0.0, 1, 1.05, 4.73, 4.73, 5.4],
  [2, 4.73, 1, 1.05, 4.73, 9.45, 5.4],
  [3, 9.45, 0.96, 1.01, 4.53, 13.98, 5.2],
  [4, 13.98, 0.55, 0.57, 2.59, 16.57, 3.3],
  [5, 16.57, 0.31, 0.33, 1.47, 18.04, 2.1],
  [6, 18.04, 0.18, 0.19, 0.84, 18.88, 1.5],
  [7, 18.88, 0.1, 0.11, 0.48, 19.36, 1.2],
  [8, 19.36, 0.06, 0.06, 0.27, 19.64, 0.9],
  [9, 19.64, 0.03, 0.03, 0.16, 19.79, 0.8],
  [10, 19.79, 0.02, 0.02, 0.09, 19.88, 0.8],
] as const;

describe("FAO56 example 31, drying of bare soil", () => {
  it("has ten days", () => expect(EXAMPLE_31).toHaveLength(10));

  let depletionMm = 0;
  it.each(EXAMPLE_31)("day %i", (_day, start, reduction, coefficient, evaporated, end, used) => {
    const out = evaporationDay({
      et0Mm: 4.5,
      basalCoefficient: 0.15,
      mostCoefficient: 1.2,
      wetBareFrac: 1,
      wettingMm: 0,
      depletionBeforeMm: depletionMm,
      evaporableMm: 20,
      freelyEvaporableMm: 9,
    });
    depletionMm = out.depletionAtEndMm;
    expect(Math.abs(out.depletionAtStartMm - start)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.reduction - reduction)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.coefficient - coefficient)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.evaporatedMm - evaporated)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.depletionAtEndMm - end)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.usedMm - used)).toBeLessThanOrEqual(0.051);
  });
});

/**
 * Example 35: ten days of the dual method. Columns: day, ETo, wetting (rain less run-off + I/fw), few, Kcb, De start,
 * Kc, ETc, De end. TEW 18, REW 8, Kc max 1.21, De before day 1 = TEW.
 */
const EXAMPLE_35 = [
  [1, 4.5, 50, 0.8, 0.3, 0, 1.21, 5.5, 5],
  [2, 5.0, 0, 0.8, 0.31, 5, 1.21, 6.1, 11],
  [3, 3.9, 0, 0.8, 0.32, 11, 1.04, 4.0, 14],
  [4, 4.2, 0, 0.8, 0.33, 14, 0.7, 2.9, 16],
  [5, 4.8, 0, 0.8, 0.34, 16, 0.52, 2.5, 17],
  [6, 2.7, 6, 0.89, 0.36, 11, 1.0, 2.7, 13],
  [7, 5.8, 0, 0.88, 0.37, 13, 0.82, 4.7, 16],
  [8, 5.1, 0, 0.87, 0.38, 16, 0.55, 2.8, 17],
  [9, 4.7, 0, 0.87, 0.39, 17, 0.47, 2.2, 18],
  [10, 5.2, 0, 0.86, 0.4, 18, 0.44, 2.3, 18],
] as const;

describe("FAO56 example 35, ten days of dual coefficients", () => {
  it("has ten days", () => expect(EXAMPLE_35).toHaveLength(10));

  // The printed table goes on with depletions rounded to whole mm, and its day 3 does not agree with itself (Ke 0.62,
  // Kcb 0.32, but Kc 1.04). The unrounded chain misses it by up to 0.074 in Kc and 0.23 mm in ETc (both day 3) and
  // 0.67 mm in De (day 9), measured.
  let depletionMm: number = 18;
  it.each(EXAMPLE_35)("day %i", (_day, et0Mm, wettingMm, few, kcb, start, kc, etc, end) => {
    const out = evaporationDay({
      et0Mm,
      basalCoefficient: kcb,
      mostCoefficient: 1.21,
      wetBareFrac: few,
      wettingMm,
      depletionBeforeMm: depletionMm,
      evaporableMm: 18,
      freelyEvaporableMm: 8,
    });
    depletionMm = out.depletionAtEndMm;
    expect(Math.abs(out.depletionAtStartMm - start)).toBeLessThanOrEqual(0.7);
    expect(Math.abs(out.usedMm / et0Mm - kc)).toBeLessThanOrEqual(0.075);
    expect(Math.abs(out.usedMm - etc)).toBeLessThanOrEqual(0.24);
    expect(Math.abs(out.depletionAtEndMm - end)).toBeLessThanOrEqual(0.7);
  });
});

/** Example 36: total and readily available water. Columns: crop, soil, Zr, p, field capacity, wilting, TAW, RAW. */
const EXAMPLE_36 = [
  ["onion", "loamy sand", 0.4, 0.3, 0.15, 0.06, 36, 11],
  ["onion", "silt", 0.4, 0.3, 0.32, 0.15, 68, 20],
  ["onion", "silty clay", 0.4, 0.3, 0.35, 0.23, 48, 14],
  ["tomato", "loamy sand", 0.8, 0.4, 0.15, 0.06, 72, 29],
  ["tomato", "silt", 0.8, 0.4, 0.32, 0.15, 136, 54],
  ["tomato", "silty clay", 0.8, 0.4, 0.35, 0.23, 96, 38],
  ["maize", "loamy sand", 1.2, 0.55, 0.15, 0.06, 108, 59],
  ["maize", "silt", 1.2, 0.55, 0.32, 0.15, 204, 112],
  ["maize", "silty clay", 1.2, 0.55, 0.35, 0.23, 144, 79],
] as const;

describe("FAO56 example 36, available water", () => {
  it("has nine cases", () => expect(EXAMPLE_36).toHaveLength(9));

  it.each(EXAMPLE_36)(
    "%s in %s",
    (_crop, _soil, depthM, depletionFrac, fieldCapacityFrac, wiltingFrac, taw, raw) => {
      const zone = rootZoneOf({ fieldCapacityFrac, wiltingFrac, depthM, depletionFrac });
      expect(Math.abs(zone.usableMm - taw)).toBeLessThanOrEqual(0.501);
      expect(Math.abs(zone.readilyUsableMm - raw)).toBeLessThanOrEqual(0.501);
    },
  );

  it.each(EXAMPLE_36)("%s in %s: the tank cuts the plant from RAW on and dries it to TAW", (...row) => {
    const [, , , depletionFrac, , , taw, raw] = row;
    const used = (depletionMm: number) => {
      const tank = plainTank({ usableMm: taw, depletionFrac, demandPerMm: 1, depletionMm });
      oneDay(tank, { et0Mm: 1 });
      return tank.account.transpiredMl[0]!;
    };
    expect(used(raw - 0.6)).toBeCloseTo(1, 9);
    expect(used(raw + 1.5)).toBeLessThan(1);
    expect(used(taw)).toBe(0);
  });
});

/** Example 37: stress. TAW 160, RAW 64, Dr before 55, ETc 6. Columns: day, Dr start, Ks, ETc adjusted, Dr end. */
const EXAMPLE_37 = [
  [1, 55.0, 1.0, 6.0, 61.0],
  [2, 61.0, 1.0, 6.0, 67.0],
  [3, 67.0, 0.97, 5.8, 72.8],
  [4, 72.8, 0.91, 5.4, 78.3],
  [5, 78.3, 0.85, 5.1, 83.4],
  [6, 83.4, 0.8, 4.8, 88.2],
  [7, 88.2, 0.75, 4.5, 92.6],
  [8, 92.6, 0.7, 4.2, 96.9],
  [9, 96.9, 0.66, 3.9, 100.8],
  [10, 100.8, 0.62, 3.7, 104.5],
] as const;

describe("FAO56 example 37, water stress", () => {
  it("has ten days", () => expect(EXAMPLE_37).toHaveLength(10));

  const zone = rootZoneOf({ fieldCapacityFrac: 0.32, wiltingFrac: 0.12, depthM: 0.8, depletionFrac: 0.4 });
  let depletionMm = 55;
  it.each(EXAMPLE_37)("day %i, by the day", (_day, start, stress, used, end) => {
    const out = rootZoneDay({ zone, depletionBeforeMm: depletionMm, waterMm: 0, demandMm: 6 });
    depletionMm = out.depletionAtEndMm;
    expect(Math.abs(out.depletionAtStartMm - start)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(out.stress - stress)).toBeLessThanOrEqual(0.0051);
    expect(Math.abs(out.usedMm - used)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(out.depletionAtEndMm - end)).toBeLessThanOrEqual(0.051);
  });

  // The hourly balance itself, given each day as one step.
  const tank = plainTank({ usableMm: 160, depletionFrac: 0.4, demandPerMm: 1.2, depletionMm: 55 });
  it.each(EXAMPLE_37)("day %i, through the tank", (_day, _start, _stress, used, end) => {
    const before = tank.account.transpiredMl[0]!;
    oneDay(tank, { et0Mm: 5 });
    expect(Math.abs(tank.account.transpiredMl[0]! - before - used)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(tank.bodyMl[0]! - end)).toBeLessThanOrEqual(0.051);
  });
});

/** Example 38: irrigation schedule. Columns: day, ETc, rain + irrigation, DP, Dr end. Ks is 1 throughout. */
const EXAMPLE_38 = [
  [1, 5.5, 40, 17, 5],
  [2, 6.1, 0, 0, 12],
  [3, 4.0, 0, 0, 16],
  [4, 2.9, 0, 0, 18],
  [5, 2.5, 0, 0, 21],
  [6, 2.7, 6, 0, 18],
  [7, 4.7, 0, 0, 22],
  [8, 2.8, 0, 0, 25],
  [9, 2.2, 0, 0, 27],
  [10, 6.3, 27, 0, 6],
] as const;

describe("FAO56 example 38, drain first and then use", () => {
  it("has ten days", () => expect(EXAMPLE_38).toHaveLength(10));

  // The table goes on with whole mm: ETc of 5.5 ends day 1 at 5. The unrounded chain is off by up to 0.7 mm, measured.
  const tank = plainTank({ usableMm: 39, depletionFrac: 0.7, demandPerMm: 1, depletionMm: 23 });
  it.each(EXAMPLE_38)("day %i, through the tank", (_day, etc, water, deep, end) => {
    const before = tank.account.drainedMl[0]!;
    oneDay(tank, { et0Mm: etc, rainMm: water });
    expect(Math.abs(tank.account.drainedMl[0]! - before - deep)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(tank.bodyMl[0]! - end)).toBeLessThanOrEqual(0.71);
  });
});

function oneDay(tank: ReturnType<typeof plainTank>, day: { et0Mm: number; rainMm?: number }): void {
  const weather = forcing({ hourCount: 1, et0Mm: () => day.et0Mm, rainMm: () => day.rainMm ?? 0 });
  runHours(tank, { forcing: weather, fromHour: 0, toHour: 1, pourMl: 0 }, null);
}
