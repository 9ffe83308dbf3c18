import { describe, expect, test } from "vitest";
import { batch } from "../../../core/mix/batch.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { WorkWindow } from "../../../core/plan/plan.ts";
import { cylinder, got, parts, problemsOf, worked } from "./build-mix.ts";

const components = componentsById();
/** Exactly a litre of mix. */
const LITRE = { ...cylinder(10), shape: "square" as const };
const RECIPE = { "coco-chips": 1, pumice: 2, grit: 1 };
const INPUT = { parts: parts(RECIPE), components, pots: [{ count: 6, vessel: LITRE }], spareFrac: 0 };

const window = (from: string): WorkWindow => ({
  from,
  to: from.replace("T06", "T10"),
  dryShareFrac: 0.9,
  hottestHeatIndexC: 24,
  dryDaysAfter: 2,
});

describe("what to fetch for a batch", () => {
  test("mixed litres fill the pots; loose litres are more by what shrinks away", () => {
    const came = got(batch(INPUT));
    const { shrinkFrac } = worked(RECIPE);
    expect(came.potLitres).toBeCloseTo(6, 9);
    expect(came.mixedLitres).toBeCloseTo(6, 9);
    expect(came.looseLitres * (1 - shrinkFrac)).toBeCloseTo(6, 9);
    expect(came.lines.map(({ component }) => component)).toEqual(["coco-chips", "pumice", "grit"]);
    expect(came.lines.reduce((sum, { litres }) => sum + litres, 0)).toBeCloseTo(came.looseLitres, 9);
    expect(came.lines[1]!.litres).toBeCloseTo(2 * came.lines[0]!.litres, 9);
  });

  test("a tenth is spare unless told otherwise", () => {
    expect(got(batch({ ...INPUT, spareFrac: 0.25 })).mixedLitres).toBeCloseTo(7.5, 9);
    const { spareFrac: _, ...usual } = INPUT;
    expect(got(batch(usual)).mixedLitres).toBeCloseTo(6.6, 9);
  });

  test("gap and dressing are left out of the mix, and the dressing is counted by itself", () => {
    const pots = [{ count: 2, vessel: { ...LITRE, rimGapCm: 2, topDressingCm: 1 } }];
    const came = got(batch({ ...INPUT, pots }));
    expect(came.potLitres).toBeCloseTo(1.6, 9);
    expect(came.dressingLitres).toBeCloseTo(0.2, 9);
  });

  test("bags are whole and never too few; a bag that fits exactly is one bag", () => {
    const bags = (bagLitres: Record<string, number>) =>
      got(batch({ ...INPUT, parts: parts({ pumice: 1 }), bagLitres })).lines[0]!.bags;
    expect(bags({ pumice: 6 })).toBe(1);
    expect(bags({ pumice: 5.9 })).toBe(2);
    expect(bags({ grit: 6 })).toBeNull();
  });

  test("kilograms are litres times density, each with its range", () => {
    const came = got(batch({ ...INPUT, parts: parts({ grit: 1 }) }));
    expect(came.dryMassKg.mid).toBeCloseTo(9, 9);
    expect(came.dryMassKg.low).toBeLessThan(9);
    expect(came.dryMassKg.high).toBeGreaterThan(9);
  });

  test("says what to prepare and what to guard against", () => {
    expect(got(batch(INPUT)).care).toEqual([
      { code: "silica-dust", components: ["grit"], hours: 0 },
      { code: "dust", components: ["pumice"], hours: 0 },
      { code: "soak", components: ["coco-chips"], hours: 24 },
      { code: "rinse", components: ["coco-chips", "pumice", "grit"], hours: 2 },
      { code: "sieve", components: ["pumice"], hours: 0 },
    ]);
  });

  test("soaking starts a day before the first dry hours that leave time for it", () => {
    const nowUtcMs = Date.parse("2026-05-13T12:00Z");
    const windows = [window("2026-05-16T06:00Z"), window("2026-05-14T06:00Z"), window("2026-05-15T06:00Z")];
    const { starts } = got(batch({ ...INPUT, windows, nowUtcMs }));
    expect(starts.map(({ task, startUtcMs }) => [task.code, new Date(startUtcMs).toISOString()])).toEqual([
      ["soak", "2026-05-14T06:00:00.000Z"],
      ["rinse", "2026-05-15T04:00:00.000Z"],
    ]);
  });

  test("soaking waits for hours that are all but sure to be dry, and for the surest where none are", () => {
    const nowUtcMs = Date.parse("2026-05-13T12:00Z");
    const opens = (...shares: number[]) => {
      const windows = shares.map((dryShareFrac, index) => ({
        ...window(`2026-05-${15 + index}T06:00Z`),
        dryShareFrac,
      }));
      return new Date(got(batch({ ...INPUT, windows, nowUtcMs })).starts[0]!.windowFromUtcMs).getUTCDate();
    };
    expect(opens(0.76, 0.96, 0.99)).toBe(16);
    expect(opens(0.72, 0.78, 0.75)).toBe(16);
    expect(opens(0.75, 0.75)).toBe(15);
  });

  test("without a window that leaves time nothing is dated", () => {
    const nowUtcMs = Date.parse("2026-05-13T12:00Z");
    expect(got(batch({ ...INPUT, windows: [window("2026-05-14T06:00Z")], nowUtcMs })).starts).toEqual([]);
    expect(got(batch({ ...INPUT, windows: [window("2026-05-15T06:00Z")] })).starts).toEqual([]);
  });

  test("every fault at once", () => {
    const came = batch({
      ...INPUT,
      parts: parts({ pumicce: 0 }),
      pots: [{ count: 1.5, vessel: { ...LITRE, topCm: 0 } }],
      spareFrac: -0.1,
      bagLitres: { pumice: 0 },
    });
    expect(problemsOf(came)).toEqual([
      { code: "unknown-component", path: "parts.0.component" },
      { code: "not-above-zero", path: "parts.0.parts" },
      { code: "not-a-count", path: "pots.0.count" },
      { code: "not-above-zero", path: "pots.0.vessel.topCm" },
      { code: "below-zero", path: "spareFrac" },
      { code: "not-above-zero", path: "bagLitres.pumice" },
    ]);
    expect(problemsOf(batch({ ...INPUT, pots: [] }))).toEqual([{ code: "no-pots", path: "pots" }]);
  });
});
