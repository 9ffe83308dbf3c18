import { describe, expect, it } from "vitest";
import { coverOf } from "../../../../core/pot/balance/cover.ts";
import { runHours } from "../../../../core/pot/balance/run-hours.ts";
import { forcing } from "../build-pot.ts";
import { plainTank } from "./plain-tank.ts";

/**
 * MODAIHSH1985, abstract: water lost in 35 days from columns of one soil under two constant demands, bare and under
 * sand of two thicknesses. mm, mm a day, cm. Status: read-in-source (abstract).
 */
const COLUMNS = [
  { demandMmPerDay: 11, coverCm: 0, lostMm: 67.9 },
  { demandMmPerDay: 5.5, coverCm: 0, lostMm: 66.8 },
  { demandMmPerDay: 11, coverCm: 2, lostMm: 37.6 },
  { demandMmPerDay: 5.5, coverCm: 2, lostMm: 27.1 },
  { demandMmPerDay: 11, coverCm: 6, lostMm: 15.0 },
  { demandMmPerDay: 5.5, coverCm: 6, lostMm: 9.5 },
] as const;

/** Loss in 35 days at constant demand from a column too deep to feel its end. */
function lostMm(of: { demandMmPerDay: number; coverCm: number; sorptivity: number }): number {
  const cover = coverOf(of.coverCm, 10);
  const tank = plainTank({
    usableMm: 1,
    surfaceMm: 1000,
    sorptivityMmPerSqrtDay: of.sorptivity,
    evaporationPerMm: 1,
    cover,
  });
  const weather = forcing({ hourCount: 35 * 24, et0Mm: () => of.demandMmPerDay / 24 });
  runHours(tank, { forcing: weather, fromHour: 0, toHour: 35 * 24, pourMl: 0 }, null);
  return tank.account.evaporatedMl[0]!;
}

/** The soil's one figure, found from the first column alone. */
function sorptivityOfFirst(): number {
  let low = 1;
  let high = 40;
  for (let i = 0; i < 60; i++) {
    const sorptivity = (low + high) / 2;
    if (lostMm({ ...COLUMNS[0], sorptivity }) < COLUMNS[0].lostMm) low = sorptivity;
    else high = sorptivity;
  }
  return low;
}

describe("two-stage drying against MODAIHSH1985", () => {
  it("has six columns", () => expect(COLUMNS).toHaveLength(6));

  it("foretells the bare column at half the demand from the one at full demand, within 1 %", () => {
    const foretold = lostMm({ ...COLUMNS[1], sorptivity: sorptivityOfFirst() });
    // Measured: 67.1 for 66.8, off by 0.5 %.
    expect(Math.abs(foretold / COLUMNS[1].lostMm - 1)).toBeLessThan(0.01);
  });

  // The law has three constants set on the first three; the last is foretold (9.51 for 9.5), the others guard the code.
  it.each(COLUMNS.slice(2))("coarse sand of $coverCm cm at $demandMmPerDay mm a day", (column) => {
    const foretold = lostMm({ ...column, sorptivity: sorptivityOfFirst() });
    expect(Math.abs(foretold / column.lostMm - 1)).toBeLessThan(0.02);
  });
});

/**
 * VANDERBORGHT2005 eq. 44-47: evaporation into air from a deep column, limited by demand J and then by what rises:
 * E = J until S^2 / (2 J^2), then S / (2 sqrt(t' + t - t_pot)), t' = S^2 / (4 J^2). Formula read-in-source; the
 * cumulative depths below were worked out from it once, outside this project. cm, cm a day, cm / sqrt(day).
 */
const TWO_STAGE = [
  { soil: "loam", demand: 0.1, sorptivity: 0.1391, days: 2, lost: 0.171 },
  { soil: "loam", demand: 0.1, sorptivity: 0.1391, days: 4, lost: 0.261 },
  { soil: "loam", demand: 0.1, sorptivity: 0.1391, days: 10, lost: 0.429 },
  { soil: "loam", demand: 0.3, sorptivity: 0.1391, days: 1, lost: 0.1353 },
  { soil: "loam", demand: 0.3, sorptivity: 0.1391, days: 2, lost: 0.1941 },
  { soil: "clay", demand: 0.3, sorptivity: 0.3233, days: 1, lost: 0.272 },
  { soil: "clay", demand: 0.3, sorptivity: 0.3233, days: 2, lost: 0.423 },
  { soil: "clay", demand: 0.3, sorptivity: 0.3233, days: 6, lost: 0.772 },
] as const;

describe("two-stage drying against the closed form of VANDERBORGHT2005", () => {
  it("has eight cases", () => expect(TWO_STAGE).toHaveLength(8));

  // The hour in which the stages meet counts wholly as the one or the other: 1 % at most, measured 0.4 %.
  it.each(TWO_STAGE)("$soil, demand $demand, day $days", (row) => {
    const tank = plainTank({
      usableMm: 1,
      surfaceMm: 1000,
      sorptivityMmPerSqrtDay: 10 * row.sorptivity,
      evaporationPerMm: 1,
    });
    const hours = row.days * 24;
    const weather = forcing({ hourCount: hours, et0Mm: () => (10 * row.demand) / 24 });
    runHours(tank, { forcing: weather, fromHour: 0, toHour: hours, pourMl: 0 }, null);
    expect(Math.abs(tank.account.evaporatedMl[0]! / (10 * row.lost) - 1)).toBeLessThan(0.01);
  });
});
