import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { blendOf } from "../../../core/mix/blend.ts";
import { COMPONENTS, componentsById } from "../../../core/mix/library.ts";
import { mixFigures } from "../../../core/mix/mix-figures.ts";
import { mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { type PotWork, potWork } from "../../../core/mix/pot-work.ts";
import { waterFracAt } from "../../../core/mix/retention.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { cylinder, got, mixOf, parts, worked } from "./build-mix.ts";

const components = componentsById();
const ids = COMPONENTS.map(({ id }) => id);

const recipes = fc
  .uniqueArray(fc.record({ id: fc.constantFrom(...ids), count: fc.integer({ min: 1, max: 12 }) }), {
    minLength: 1,
    maxLength: 5,
    selector: ({ id }) => id,
  })
  .map((chosen) => Object.fromEntries(chosen.map(({ id, count }) => [id, count])));

const curves = fc.record({
  residualFrac: fc.double({ min: 0, max: 0.3, noNaN: true }),
  saturatedFrac: fc.double({ min: 0.35, max: 0.95, noNaN: true }),
  alphaPerCm: fc.double({ min: 0.005, max: 3, noNaN: true }),
  n: fc.double({ min: 1.1, max: 5, noNaN: true }),
});

const widths = fc.double({ min: 4, max: 60, noNaN: true });
const vessels = fc.record({
  shape: fc.constantFrom("round" as const, "square" as const),
  topCm: widths,
  baseCm: widths,
  heightCm: fc.double({ min: 3, max: 60, noNaN: true }),
});

const work = (input: Parameters<typeof potWork>[0]): PotWork => got(potWork(input));
/** Room for rounding of sums of some thousand millilitres. */
const CLOSE = 1e-6;

describe("any mix in any vessel", () => {
  test("water, air and solids stay within the pot, and what roots can use within the water", () => {
    fc.assert(
      fc.property(recipes, vessels, (recipe, vessel) => {
        const pot = work({ mix: parts(recipe), vessel });
        expect(pot.capacityMl).toBeGreaterThan(0);
        expect(pot.capacityFrac).toBeLessThanOrEqual(pot.totalPorosityFrac);
        expect(pot.airSpaceFrac).toBeGreaterThanOrEqual(0);
        expect(pot.totalPorosityFrac).toBeLessThan(1);
        expect(pot.capacityFrac + pot.airSpaceFrac).toBeCloseTo(pot.totalPorosityFrac, 12);
        expect(pot.usableMl).toBeGreaterThanOrEqual(0);
        expect(pot.usableMl).toBeLessThanOrEqual(pot.capacityMl);
        expect(pot.wetLayerCm).toBeLessThanOrEqual(vessel.heightCm);
        expect(pot.drainedMassKg!).toBeGreaterThan(pot.capacityMl / 1000);
      }),
    );
  });

  test("parts 2:1:1 are parts 4:2:2, whatever their order", () => {
    fc.assert(
      fc.property(recipes, vessels, fc.integer({ min: 2, max: 9 }), (recipe, vessel, times) => {
        const once = work({ mix: parts(recipe), vessel });
        const more = Object.fromEntries(Object.entries(recipe).map(([id, count]) => [id, count * times]));
        const often = work({ mix: parts(more).reverse(), vessel });
        for (const [name, value] of Object.entries(once)) {
          expect(often[name as keyof PotWork]).toBeCloseTo(value, 6);
        }
      }),
    );
  });

  test("a component named twice is one component", () => {
    const vessel = { shape: "round" as const, topCm: 20, baseCm: 14, heightCm: 18 };
    const split = [...parts({ peat: 1, grit: 1 }), ...parts({ peat: 1 })];
    expect(work({ mix: split, vessel })).toEqual(work({ mix: parts({ peat: 2, grit: 1 }), vessel }));
  });

  test("every range holds its central value and stays within what is possible", () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        for (const [name, { low, mid, high }] of Object.entries(mixFigures(worked(recipe)))) {
          expect(low, name).toBeLessThanOrEqual(mid);
          expect(mid, name).toBeLessThanOrEqual(high);
          expect(low, name).toBeGreaterThanOrEqual(0);
          if (name.endsWith("Frac")) expect(high, name).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test("the range of the capacity holds 1 and never promises more water than pores", () => {
    fc.assert(
      fc.property(recipes, vessels, (recipe, plain) => {
        const vessel: Vessel = { ...plain, material: "plastic" };
        const { hold, ranges } = got(mixInVessel({ mix: mixOf(recipe), vessel, components }));
        const { low, mid, high } = ranges.capacityFactor;
        expect(low).toBeGreaterThan(0);
        expect(low).toBeLessThanOrEqual(1);
        expect(mid).toBe(1);
        expect(high).toBeGreaterThanOrEqual(1);
        expect(high * hold.capacityFrac).toBeLessThanOrEqual(hold.totalPorosityFrac + 1e-9);
        expect(hold.usableMl + hold.unusableMl).toBeCloseTo(hold.capacityMl, 6);
        expect(hold.dryMassKg).toBeLessThan(hold.drainedMassKg);
        expect(hold.drainedMassKg).toBeLessThanOrEqual(hold.soakedMassKg + CLOSE);
      }),
    );
  });

  test("mixing adds no mass and no solids: both are kept while the volume shrinks", () => {
    fc.assert(
      fc.property(recipes, (recipe) => {
        const mix = worked(recipe);
        const total = Object.values(recipe).reduce((sum, count) => sum + count, 0);
        const sum = (figure: (id: string) => number) =>
          Object.entries(recipe).reduce((so, [id, count]) => so + (count / total) * figure(id), 0);
        const left = 1 - mix.shrinkFrac;
        const solids = sum((id) => 1 - components.get(id)!.totalPorosityFrac.mid);
        expect((1 - mix.retention.totalPorosityFrac) * left).toBeCloseTo(solids, 12);
        expect(mix.dryDensityKgPerL * left).toBeCloseTo(
          sum((id) => components.get(id)!.dryDensityKgPerL.mid),
          12,
        );
      }),
    );
  });

  test("more suction never holds more", () => {
    fc.assert(
      fc.property(recipes, fc.double({ min: 0, max: 1e4, noNaN: true }), (recipe, suctionCm) => {
        const { retention } = blendOf(worked(recipe).portions);
        expect(waterFracAt(retention, suctionCm * 1.1 + 0.1)).toBeLessThanOrEqual(
          waterFracAt(retention, suctionCm),
        );
      }),
    );
  });
});

describe("finer, taller, heavier, wetter", () => {
  test("a finer material, which drains at higher suction, never holds less", () => {
    fc.assert(
      fc.property(
        curves,
        vessels,
        fc.double({ min: 0.1, max: 0.99, noNaN: true }),
        (curve, vessel, finer) => {
          const coarse = work({ curve, vessel });
          const fine = work({ curve: { ...curve, alphaPerCm: curve.alphaPerCm * finer }, vessel });
          expect(fine.capacityMl).toBeGreaterThanOrEqual(coarse.capacityMl * (1 - CLOSE));
          expect(fine.airSpaceFrac).toBeLessThanOrEqual(coarse.airSpaceFrac + CLOSE);
          expect(fine.wetLayerCm).toBeGreaterThanOrEqual(coarse.wetLayerCm - CLOSE);
        },
      ),
    );
  });

  test("a taller pot of the same volume never holds more", () => {
    fc.assert(
      fc.property(
        recipes,
        vessels,
        fc.double({ min: 1.01, max: 3, noNaN: true }),
        (recipe, vessel, taller) => {
          const narrow = 1 / Math.sqrt(taller);
          const tall = {
            ...vessel,
            topCm: vessel.topCm * narrow,
            baseCm: vessel.baseCm * narrow,
            heightCm: vessel.heightCm * taller,
          };
          const low = work({ mix: parts(recipe), vessel });
          const high = work({ mix: parts(recipe), vessel: tall });
          expect(high.volumeMl / low.volumeMl).toBeCloseTo(1, 9);
          expect(high.capacityMl).toBeLessThanOrEqual(low.capacityMl * (1 + CLOSE));
        },
      ),
    );
  });

  test("a deeper pot of the same mix and width never holds less", () => {
    fc.assert(
      fc.property(recipes, fc.double({ min: 3, max: 40, noNaN: true }), (recipe, heightCm) => {
        const at = (height: number) => work({ mix: parts(recipe), vessel: cylinder(height) }).capacityMl;
        expect(at(heightCm + 1)).toBeGreaterThan(at(heightCm));
      }),
    );
  });

  test("grit in a peat mix lowers what it holds and raises its weight, part by part", () => {
    for (const heightCm of [8, 15, 30]) {
      let before = work({ mix: parts({ peat: 10 }), vessel: cylinder(heightCm) });
      for (let grit = 1; grit <= 20; grit++) {
        const after = work({ mix: parts({ peat: 10, grit }), vessel: cylinder(heightCm) });
        expect(after.capacityMl).toBeLessThan(before.capacityMl);
        expect(after.drainedMassKg!).toBeGreaterThan(before.drainedMassKg!);
        before = after;
      }
    }
  });

  test("a saucer of water lifts the wet layer by its depth, up to the top, and adds water", () => {
    fc.assert(
      fc.property(
        recipes,
        vessels,
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        (recipe, vessel, saucerCm) => {
          const dry = work({ mix: parts(recipe), vessel });
          const wet = work({ mix: parts(recipe), vessel: { ...vessel, saucerCm } });
          expect(wet.wetLayerCm).toBeCloseTo(Math.min(vessel.heightCm, dry.wetLayerCm + saucerCm), 9);
          expect(wet.capacityMl).toBeGreaterThanOrEqual(dry.capacityMl * (1 - CLOSE));
        },
      ),
    );
  });
});
