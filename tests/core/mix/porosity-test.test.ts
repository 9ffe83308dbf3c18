import { describe, expect, test } from "vitest";
import { componentsById } from "../../../core/mix/library.ts";
import { mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { porosityTestByScale } from "../../../core/mix/porosity-by-scale.ts";
import { porosityTestWork } from "../../../core/mix/porosity-test-work.ts";
import { workedMix } from "../../../core/mix/worked-mix.ts";
import { cylinder, got, heldFrac, mixOf, problemsOf } from "./build-mix.ts";

const components = componentsById();
const TEST = { potMl: 1000, addedMl: 560, drainedMl: 240 };

describe("the grower's porosity test", () => {
  test("pores are what went in, air is what ran out, water already there counts as pores", () => {
    expect(got(porosityTestWork({ potMl: 2000, addedMl: 900, drainedMl: 500, heldBeforeMl: 100 }))).toEqual({
      totalPorosityFrac: 0.5,
      airSpaceFrac: 0.25,
      capacityFrac: 0.25,
    });
  });

  test("a test that cannot be right is explained", () => {
    expect(problemsOf(porosityTestWork({ potMl: 1000, addedMl: 400, drainedMl: 450 }))).toEqual([
      { code: "drained-more-than-poured", path: "drainedMl" },
    ]);
    expect(
      problemsOf(porosityTestWork({ potMl: 1000, addedMl: 900, drainedMl: 300, heldBeforeMl: 200 })),
    ).toEqual([{ code: "more-water-than-pot", path: "addedMl" }]);
    expect(
      problemsOf(porosityTestWork({ potMl: 0, addedMl: -1, drainedMl: Number.NaN, heldBeforeMl: -5 })),
    ).toEqual([
      { code: "not-above-zero", path: "potMl" },
      { code: "not-above-zero", path: "addedMl" },
      { code: "below-zero", path: "drainedMl" },
      { code: "below-zero", path: "heldBeforeMl" },
    ]);
  });

  test("the explanation carries the amounts that it needs", () => {
    const came = porosityTestWork({ potMl: 1000, addedMl: 400, drainedMl: 450 });
    expect(came).toMatchObject({ problems: [{ data: { given: 450, pouredMl: 400, heldBeforeMl: 0 } }] });
  });

  test("by kitchen scale it is the same test", () => {
    const weighed = { potMl: 1000, filledKg: 0.9, soakedKg: 1.46, drainedKg: 1.22 };
    const test = got(porosityTestByScale(weighed));
    expect(test.addedMl).toBeCloseTo(560, 9);
    expect(test.drainedMl).toBeCloseTo(240, 9);
    expect(problemsOf(porosityTestByScale({ ...weighed, soakedKg: 0.8, drainedKg: 1 }))).toEqual([
      { code: "no-heavier-when-soaked", path: "soakedKg" },
      { code: "heavier-when-drained", path: "drainedKg" },
    ]);
  });
});

describe("a test in place of the library", () => {
  const tested = mixOf({ pumice: 2, "coco-peat": 1, grit: 1 }, { test: TEST });

  test("the test pot holds what was measured, and other heights follow the library's shape", () => {
    const mix = got(workedMix(tested, components));
    // The test names a volume of 1 L: a pot as tall as wide is 10.84 cm tall.
    const testPot = cylinder(10.84, { topCm: 10.84, baseCm: 10.84 });
    expect(heldFrac(mix, testPot)).toBeCloseTo(0.32, 3);
    expect(heldFrac(mix, cylinder(25))).toBeLessThan(heldFrac(mix, testPot));
    expect(heldFrac(mix, cylinder(5))).toBeGreaterThan(heldFrac(mix, testPot));
  });

  test("pores are as measured, the range narrows, and it no longer counts as library only", () => {
    const vessel = cylinder(15);
    const library = got(
      mixInVessel({ mix: { ...tested, test: undefined } as typeof tested, vessel, components }),
    );
    const own = got(mixInVessel({ mix: tested, vessel, components }));
    expect(own.hold.totalPorosityFrac).toBe(0.56);
    expect(own.libraryOnly).toBe(false);
    expect(library.libraryOnly).toBe(true);
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    expect(width(own.ranges.capacityFactor)).toBeLessThan(width(library.ranges.capacityFactor));
    expect(own.hold.unusableMl).toBeLessThan(own.hold.capacityMl);
  });

  test("very dry and very wet tests still come out as measured", () => {
    for (const drainedMl of [30, 100, 300, 500, 540]) {
      const mix = got(workedMix({ ...tested, test: { ...TEST, drainedMl } }, components));
      const testPot = cylinder(10.8385, { topCm: 10.8385, baseCm: 10.8385 });
      expect(heldFrac(mix, testPot)).toBeCloseTo((560 - drainedMl) / 1000, 3);
    }
  });

  test("an impossible test is a problem of the mix, beside the others", () => {
    const mix = { ...mixOf({ pumace: 1 }), test: { ...TEST, drainedMl: 600 } };
    expect(problemsOf(mixInVessel({ mix, vessel: cylinder(-1), components }))).toEqual([
      { code: "not-above-zero", path: "vessel.heightCm" },
      { code: "unknown-component", path: "mix.recipe.parts.0.component" },
      { code: "drained-more-than-poured", path: "mix.test.drainedMl" },
    ]);
  });
});
