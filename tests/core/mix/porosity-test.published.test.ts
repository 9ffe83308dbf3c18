import { describe, expect, test } from "vitest";
import { curveThroughPoints } from "../../../core/mix/curve-fit.ts";
import { mixFigures } from "../../../core/mix/mix-figures.ts";
import { porosityByDensity } from "../../../core/mix/porosity-by-density.ts";
import { porosityTestWork } from "../../../core/mix/porosity-test-work.ts";
import { workedMix } from "../../../core/mix/worked-mix.ts";
import type { SourceKey } from "../../../core/sources.ts";
import { got } from "./build-mix.ts";

interface TestCase {
  readonly what: string;
  readonly key: SourceKey;
  readonly status: "read-in-source";
  /** Percent of the volume as printed. */
  readonly totalPct: number;
  readonly waterPct: number;
  readonly airPct: number;
  /** Water as a share of all pores, printed by some. */
  readonly filledPct?: number;
}

// Grains sifted and soaked in a cup by a grower; cores in a laboratory.
const TESTS: readonly TestCase[] = [
  {
    what: "perlite",
    key: "CUPTESTS",
    status: "read-in-source",
    totalPct: 61,
    waterPct: 22,
    airPct: 39,
    filledPct: 36,
  },
  {
    what: "pumice",
    key: "CUPTESTS",
    status: "read-in-source",
    totalPct: 53,
    waterPct: 17,
    airPct: 36,
    filledPct: 32,
  },
  {
    what: "lava",
    key: "CUPTESTS",
    status: "read-in-source",
    totalPct: 61,
    waterPct: 18,
    airPct: 43,
    filledPct: 30,
  },
  {
    what: "granite grit",
    key: "CUPTESTS",
    status: "read-in-source",
    totalPct: 44,
    waterPct: 8,
    airPct: 36,
    filledPct: 18,
  },
  {
    what: "pine bark core",
    key: "BOYER2012",
    status: "read-in-source",
    totalPct: 79,
    waterPct: 48,
    airPct: 31,
  },
  { what: "peat core", key: "BOYER2012", status: "read-in-source", totalPct: 98, waterPct: 87, airPct: 11 },
  {
    what: "wood chips 0.48 cm",
    key: "BOYER2012",
    status: "read-in-source",
    totalPct: 85,
    waterPct: 57,
    airPct: 28,
  },
  {
    what: "wood chips 0.95 cm",
    key: "BOYER2012",
    status: "read-in-source",
    totalPct: 90,
    waterPct: 42,
    airPct: 48,
  },
];

describe("published porosity tests in a pot of 1 L", () => {
  test.each(TESTS)("[$key] $what", ({ totalPct, waterPct, airPct, filledPct }) => {
    const came = got(porosityTestWork({ potMl: 1000, addedMl: 10 * totalPct, drainedMl: 10 * airPct }));
    expect(came.totalPorosityFrac).toBeCloseTo(totalPct / 100, 10);
    expect(came.airSpaceFrac).toBeCloseTo(airPct / 100, 10);
    expect(came.capacityFrac).toBeCloseTo(waterPct / 100, 10);
    if (filledPct === undefined) return;
    expect(Math.abs((100 * came.capacityFrac) / came.totalPorosityFrac - filledPct)).toBeLessThanOrEqual(0.5);
  });

  test("a school sheet: 3 L poured over 1 L of mix, 2.5 L came back, half its volume kept [common practice]", () => {
    // What ran past is no air space: only what the mix took counts as added.
    const came = got(porosityTestWork({ potMl: 1000, addedMl: 500, drainedMl: 0 }));
    expect(came.capacityFrac).toBe(0.5);
  });

  test("no case is lost", () => expect(TESTS.length).toBe(8));
});

describe("definitions of easily available and reserve water [DEBOODT1972], on a published coir [SOTO2022]", () => {
  test("23.6 % between 1 and 5 kPa and 2.3 % between 5 and 10 kPa come back through curve and figures", () => {
    // Water at 10 cm as printed; at 50 and 100 cm it follows from the two printed differences.
    const curve = curveThroughPoints(
      [
        { suctionCm: 10, waterFrac: 0.7718 },
        { suctionCm: 50, waterFrac: 0.7718 - 0.236 },
        { suctionCm: 100, waterFrac: 0.7718 - 0.236 - 0.023 },
      ],
      0.9167,
    );
    const recipe = { kind: "curve", curve, dryDensityKgPerL: 0.08 } as const;
    const figures = mixFigures(got(workedMix({ id: "coir", name: "coir", recipe }, new Map())));
    expect(figures.easilyAvailableFrac.mid).toBeCloseTo(0.236, 3);
    expect(figures.bufferFrac.mid).toBeCloseTo(0.023, 3);
  });
});

describe("pores and air from two densities [WALLER1991]", () => {
  test("the regression itself: 180 g/L dry and 0.66 g/mL drained give 89.9 % and 41.9 %", () => {
    const came = porosityByDensity({ dryKgPerL: 0.18, drainedKgPerL: 0.66 });
    expect(came.totalPorosityFrac).toBeCloseTo(0.899, 3);
    expect(came.airSpaceFrac).toBeCloseTo(0.419, 3);
  });

  // [BOYER2012 Table 1, read in source] density, total porosity and air as printed; what the regression says of them.
  const MEASURED = [
    {
      what: "wood chips 0.48 cm",
      dry: 0.22,
      water: 0.57,
      total: 0.85,
      air: 0.28,
      missTotal: 0.034,
      missAir: 0.034,
    },
    {
      what: "wood chips 0.95 cm",
      dry: 0.19,
      water: 0.42,
      total: 0.9,
      air: 0.48,
      missTotal: -0.005,
      missAir: -0.005,
    },
    { what: "pine bark", dry: 0.18, water: 0.48, total: 0.79, air: 0.31, missTotal: 0.109, missAir: 0.109 },
    { what: "peat", dry: 0.11, water: 0.87, total: 0.98, air: 0.11, missTotal: -0.055, missAir: -0.055 },
  ];

  test.each(MEASURED)("independent: $what, off by $missTotal in pores and $missAir in air", (row) => {
    const came = porosityByDensity({ dryKgPerL: row.dry, drainedKgPerL: row.dry + row.water });
    expect(came.totalPorosityFrac - row.total).toBeCloseTo(row.missTotal, 2);
    expect(came.airSpaceFrac - row.air).toBeCloseTo(row.missAir, 2);
    expect(Math.abs(came.totalPorosityFrac - row.total)).toBeLessThanOrEqual(0.11);
  });
});
