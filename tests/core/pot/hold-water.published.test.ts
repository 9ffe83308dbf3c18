import { describe, expect, test } from "vitest";
import { bareRetention } from "../../../core/mix/bare-retention.ts";
import type { RetentionCurve } from "../../../core/mix/curve.ts";
import { waterFracAt } from "../../../core/mix/retention.ts";
import type { SourceKey } from "../../../core/sources.ts";
import { capacityFracOf, cylinder } from "../mix/build-mix.ts";

function curve(residualFrac: number, saturatedFrac: number, alphaPerCm: number, n: number): RetentionCurve {
  return { residualFrac, saturatedFrac, alphaPerCm, n };
}

/**
 * independent: neither the curve nor the figure was set with the other in view.
 * partly: an unknown of the experiment (a pot height) is bracketed.
 * guard: the curve was fitted to the figure; it guards the code and validates nothing.
 */
type Label = "independent" | "partly" | "guard";

interface Case {
  readonly what: string;
  readonly key: SourceKey;
  readonly label: Label;
  readonly status: "read-in-source" | "from-memory";
  readonly model: () => number;
  readonly printed: number;
  readonly tolerance: number;
}

// Fitted to the published points of light peat: 0.88-0.93 at 1 cm, 0.72-0.85 at 10 cm, 0.29-0.30 at 100 cm.
const PEAT = curve(0.206, 0.93, 0.075, 2.03);
// Fitted to two of the published pot values of a bark medium.
const BARK_MEDIUM = curve(0.198, 0.71, 0.291, 2.2);
// Fitted to the published height ratios; saturated share assumed 0.80.
const FIR_BARK_MEDIUM = curve(0.36, 0.8, 1.4, 3);
const FIR_BARK_FINE = curve(0.2, 0.8, 0.6, 2.5);
// Fitted to three published suctions of one coir.
const COIR = curve(0.499, 0.917, 0.102, 2.49);

const ratio = (of: RetentionCurve) => capacityFracOf(of, cylinder(15.2)) / capacityFracOf(of, cylinder(3.8));

const CASES: readonly Case[] = [
  {
    what: "peat in a core 7.6 cm tall; the curve comes from one laboratory, the core from another",
    key: "BOYER2012",
    label: "independent",
    status: "read-in-source",
    model: () => capacityFracOf(PEAT, cylinder(7.6)),
    printed: 0.87,
    // Printed in whole points, but lots of peat differ by more: the curve's own band gives 0.86 to 0.93. Measured error +0.026.
    tolerance: 0.04,
  },
  {
    what: "bark medium in a gallon pot, 15.2 cm (height from memory): water",
    key: "BILDERBACK1987",
    label: "guard",
    status: "read-in-source",
    model: () => capacityFracOf(BARK_MEDIUM, cylinder(15.2)),
    printed: 0.43,
    tolerance: 0.005,
  },
  {
    what: "the same in a bedding cell, 5.5 cm (height from memory): water",
    key: "BILDERBACK1987",
    label: "guard",
    status: "read-in-source",
    model: () => capacityFracOf(BARK_MEDIUM, cylinder(5.5)),
    printed: 0.59,
    tolerance: 0.005,
  },
  {
    what: "the same in a gallon pot: air",
    key: "BILDERBACK1987",
    label: "guard",
    status: "read-in-source",
    model: () => 0.71 - capacityFracOf(BARK_MEDIUM, cylinder(15.2)),
    printed: 0.28,
    tolerance: 0.005,
  },
  {
    what: "the same in a bedding cell: air",
    key: "BILDERBACK1987",
    label: "guard",
    status: "read-in-source",
    model: () => 0.71 - capacityFracOf(BARK_MEDIUM, cylinder(5.5)),
    printed: 0.12,
    tolerance: 0.005,
  },
  {
    what: "medium fir bark, 15.2 cm against 3.8 cm: share of the water kept",
    key: "OWEN2008",
    label: "guard",
    status: "read-in-source",
    model: () => ratio(FIR_BARK_MEDIUM),
    printed: 0.8,
    // One curve, two grades: rounded parameters. Measured errors +0.006 and +0.005.
    tolerance: 0.02,
  },
  {
    what: "fine fir bark, 15.2 cm against 3.8 cm: share of the water kept",
    key: "OWEN2008",
    label: "guard",
    status: "read-in-source",
    model: () => ratio(FIR_BARK_FINE),
    printed: 0.58,
    tolerance: 0.02,
  },
  {
    what: "coir at 10 cm of suction",
    key: "SOTO2022",
    label: "guard",
    status: "read-in-source",
    model: () => waterFracAt(bareRetention(COIR), 10),
    printed: 0.7718,
    // The parameters are rounded to three digits. Measured error -0.0008.
    tolerance: 0.002,
  },
];

describe("published water of drained containers", () => {
  test.each(CASES)("$label [$key] $what", ({ model, printed, tolerance }) => {
    expect(Math.abs(model() - printed)).toBeLessThanOrEqual(tolerance);
  });

  test("partly [SOTO2022] coir in its pot, 0.749, lies between pots of 20 and 30 cm (its height was not printed)", () => {
    expect(capacityFracOf(COIR, cylinder(20))).toBeGreaterThan(0.749);
    expect(capacityFracOf(COIR, cylinder(30))).toBeLessThan(0.749);
  });

  test("no case is lost", () => {
    expect(CASES.length).toBe(8);
    expect(CASES.filter(({ label }) => label === "independent").length).toBe(1);
  });
});

/**
 * Mean curves of texture classes against the range that FAO-56 Table 19 gives for what the soil holds at field
 * capacity. Read at the suction that the trade uses: 100 cm for sands, 330 cm for loam. Both from memory, so the
 * check shows agreement and disagreement of two textbooks, not of our code.
 */
interface SoilCase {
  readonly soil: string;
  readonly curve: RetentionCurve;
  readonly suctionCm: number;
  readonly printed: readonly [number, number];
  /** Points below the range's low end; 0 when inside. */
  readonly missFrac: number;
}

// [CARSEL1988 mean values; CARSEL1988 read in a public parameter file, FAO56 Table 19 from memory]
const SOILS: readonly SoilCase[] = [
  {
    soil: "sand",
    curve: curve(0.045, 0.43, 0.145, 2.68),
    suctionCm: 100,
    printed: [0.07, 0.17],
    missFrac: -0.021,
  },
  {
    soil: "loamy sand",
    curve: curve(0.057, 0.41, 0.124, 2.28),
    suctionCm: 100,
    printed: [0.11, 0.19],
    missFrac: -0.039,
  },
  {
    soil: "sandy loam",
    curve: curve(0.065, 0.41, 0.075, 1.89),
    suctionCm: 100,
    printed: [0.18, 0.28],
    missFrac: -0.058,
  },
  {
    soil: "loam",
    curve: curve(0.078, 0.43, 0.036, 1.56),
    suctionCm: 330,
    printed: [0.2, 0.3],
    missFrac: -0.035,
  },
];

describe("texture-class curves against textbook field capacities [CARSEL1988, FAO56 Table 19]", () => {
  test.each(SOILS)("$soil: drier than the textbook range by $missFrac, shown and not tuned away", (soil) => {
    const heldFrac = waterFracAt(bareRetention(soil.curve), soil.suctionCm);
    expect(heldFrac - soil.printed[0]).toBeCloseTo(soil.missFrac, 2);
  });

  test("all four miss on the dry side, and the order of the soils is the textbook's", () => {
    const held = SOILS.map((soil) => waterFracAt(bareRetention(soil.curve), soil.suctionCm));
    expect(SOILS.length).toBe(4);
    expect(held).toEqual([...held].sort((a, b) => a - b));
  });
});
