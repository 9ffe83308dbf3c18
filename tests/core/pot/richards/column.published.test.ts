import { describe, expect, it } from "vitest";
import { type Column, evenCells, growingCells, headAt, runColumn } from "./column.ts";
import { haverkamp, vanGenuchten } from "./soil.ts";

function filled(cellCm: Float64Array, headCm: number): Float64Array {
  return new Float64Array(cellCm.length).fill(headCm);
}

/**
 * CELIA1990, the case of eq. 10 (Haverkamp soil, cm and s). Set-up read-in-source; heads at 360 s from a dense
 * solution by an independent program, whose grid is not known: 1.5 % of the head or 0.3 cm.
 */
const CASE_A = {
  soil: haverkamp({
    alpha: 1.611e6,
    beta: 3.96,
    saturated: 0.287,
    residual: 0.075,
    saturatedConductivity: 0.00944,
    a: 1.175e6,
    gamma: 4.74,
  }),
  infiltratedCm: 2.381,
  storedCm: 2.368,
  heads: [
    [2, -21.08],
    [4, -21.61],
    [6, -22.35],
    [8, -23.43],
    [10, -25.09],
    [12, -27.82],
    [14, -32.9],
    [16, -43.02],
    [18, -55.83],
    [20, -60.74],
  ],
} as const;

describe("the test column against CELIA1990, case A", () => {
  const cellCm = evenCells(40, 0.1);
  const column: Column = {
    soil: CASE_A.soil,
    cellCm,
    headCm: filled(cellCm, -61.5),
    top: { kind: "head", headCm: -20.7 },
    bottom: { kind: "head", headCm: -61.5 },
  };
  const run = runColumn(column, { until: 360, first: 0.01, longest: 0.5 });

  it("takes in and stores what the dense solution does", () => {
    expect(Math.abs(run.throughTopCm - CASE_A.infiltratedCm)).toBeLessThan(0.01);
    expect(Math.abs(run.storedAfterCm - run.storedBeforeCm - CASE_A.storedCm)).toBeLessThan(0.01);
  });

  it.each(CASE_A.heads)("head at %d cm", (depthCm, expected) => {
    const off = Math.abs(headAt(column, run.headCm, depthCm) - expected);
    expect(off).toBeLessThan(Math.max(0.3, 0.015 * Math.abs(expected)));
  });
});

/** CELIA1990, the case of eq. 13 (van Genuchten soil, cm and s), one day. Status as above. */
const CASE_B = {
  soil: vanGenuchten({
    residual: 0.102,
    saturated: 0.368,
    alphaPerCm: 0.0335,
    n: 2,
    saturatedConductivity: 0.00922,
  }),
  infiltratedCm: 4.113,
  heads: [
    [10, -76.9],
    [20, -80.3],
    [30, -86.7],
    [40, -100.5],
    [45, -114.4],
    [50, -142.9],
    [52, -165.8],
  ],
} as const;

describe("the test column against CELIA1990, case B", () => {
  const cellCm = evenCells(100, 0.25);
  const column: Column = {
    soil: CASE_B.soil,
    cellCm,
    headCm: filled(cellCm, -1000),
    top: { kind: "head", headCm: -75 },
    bottom: { kind: "head", headCm: -1000 },
  };
  const run = runColumn(column, { until: 86_400, first: 0.1, longest: 120 });

  it("takes in what the dense solution does, and keeps all of it", () => {
    expect(Math.abs(run.throughTopCm - CASE_B.infiltratedCm)).toBeLessThan(0.02);
    const balance = (run.storedAfterCm - run.storedBeforeCm) / (run.throughTopCm - run.throughBottomCm);
    expect(Math.abs(balance - 1)).toBeLessThan(1e-6);
  });

  it.each(CASE_B.heads)("head at %d cm, above the front", (depthCm, expected) => {
    expect(Math.abs(headAt(column, run.headCm, depthCm) / expected - 1)).toBeLessThan(0.015);
  });
});

/** VANDERBORGHT2005, soils of the benchmark set, cm and days. Read-in-source. */
const LOAM = vanGenuchten({
  residual: 0.08,
  saturated: 0.43,
  alphaPerCm: 0.04,
  n: 1.6,
  saturatedConductivity: 50,
});
const CLAY = vanGenuchten({
  residual: 0.1,
  saturated: 0.4,
  alphaPerCm: 0.01,
  n: 1.1,
  saturatedConductivity: 10,
});

/**
 * VANDERBORGHT2005, evaporation from a 100 cm profile at -200 cm, limited at -10 000 cm. The closed form leaves gravity
 * out; `dense` is a dense solution with gravity by an independent program. cm.
 */
const DRYING = [
  { soil: "loam", demand: 0.1, days: 10, closedForm: 0.429, dense: 0.421 },
  { soil: "loam", demand: 0.3, days: 2, closedForm: 0.1941, dense: 0.195 },
  { soil: "clay", demand: 0.3, days: 6, closedForm: 0.772, dense: 0.758 },
] as const;

describe("the test column against VANDERBORGHT2005, drying", () => {
  it.each(DRYING)("$soil at $demand cm a day, $days days", ({ soil, demand, days, closedForm, dense }) => {
    const cellCm = growingCells(100, { cellCm: 0.04, growth: 1.08, longestCm: 2 });
    const run = runColumn(
      {
        soil: soil === "loam" ? LOAM : CLAY,
        cellCm,
        headCm: filled(cellCm, -200),
        top: { kind: "evaporating", demand, driestHeadCm: -10_000 },
        bottom: { kind: "closed" },
      },
      { until: days, first: 1e-5, longest: 0.02 },
    );
    expect(Math.abs(-run.throughTopCm / dense - 1)).toBeLessThan(0.02);
    expect(Math.abs(-run.throughTopCm / closedForm - 1)).toBeLessThan(0.04);
  });
});

/**
 * VANDERBORGHT2005 eq. 14: steady rise of 0.5 cm a day in loam from a water table. Height above the table at which the
 * suction is reached, cm; worked out once outside this project.
 */
const RISE = [
  [10, 9.74],
  [20, 18.95],
  [30, 27.14],
  [40, 33.89],
  [60, 42.82],
  [100, 49.78],
] as const;

describe("the test column against VANDERBORGHT2005, steady rise", () => {
  const cellCm = growingCells(53, { cellCm: 0.05, growth: 1.05, longestCm: 0.25 });
  const column: Column = {
    soil: LOAM,
    cellCm,
    headCm: filled(cellCm, -20),
    top: { kind: "evaporating", demand: 0.5, driestHeadCm: -100_000 },
    bottom: { kind: "head", headCm: 0 },
  };
  const run = runColumn(column, { until: 60, first: 1e-4, longest: 0.2 });

  it.each(RISE)("suction of %d cm", (suctionCm, heightCm) => {
    expect(Math.abs(-headAt(column, run.headCm, 53 - heightCm) - suctionCm) / suctionCm).toBeLessThan(0.01);
  });
});

describe("the test column at rest", () => {
  it("drains to suction equal to height", () => {
    const cellCm = evenCells(20, 0.25);
    const run = runColumn(
      {
        soil: vanGenuchten({
          residual: 0.02,
          saturated: 0.5,
          alphaPerCm: 0.2,
          n: 2.2,
          saturatedConductivity: 3000,
        }),
        cellCm,
        headCm: filled(cellCm, 0),
        top: { kind: "closed" },
        bottom: { kind: "dripping" },
      },
      { until: 30, first: 1e-7, longest: 0.5 },
    );
    for (let i = 0; i < cellCm.length; i++) {
      const heightCm = 20 - (i + 0.5) * 0.25;
      expect(Math.abs(run.headCm[i]! + heightCm)).toBeLessThan(0.3);
    }
  });
});
