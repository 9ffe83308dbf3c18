import { describe, expect, test } from "vitest";
import { compareMixes } from "../../../core/mix/compare-mixes.ts";
import { componentsById } from "../../../core/mix/library.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import { cylinder, got, mixOf, problemsOf } from "./build-mix.ts";

const components = componentsById();
const group = [...groupsById().values()].find(({ values }) => values.leafy)!;
const PLANT = { values: group.values, canopyWidthCm: 25 };
const LEAN = { ...mixOf({ pumice: 3, "coco-peat": 1 }), id: "lean" };
const RICH = { ...mixOf({ peat: 3, perlite: 1 }), id: "rich" };
const INPUT = {
  mixes: [LEAN, RICH],
  vessel: cylinder(15),
  components,
  plant: PLANT,
  et0MmPerDay: 4,
} as const;

describe("two mixes side by side", () => {
  test("the lean one holds less, has more air, and dries sooner in the same pot and weather", () => {
    const [lean, rich] = got(compareMixes(INPUT));
    expect([lean.mixId, rich.mixId]).toEqual(["lean", "rich"]);
    expect(lean.inVessel.hold.usableMl).toBeLessThan(rich.inVessel.hold.usableMl);
    expect(lean.inVessel.hold.airSpaceFrac).toBeGreaterThan(rich.inVessel.hold.airSpaceFrac);
    expect(lean.inVessel.hold.dryMassKg).toBeGreaterThan(rich.inVessel.hold.dryMassKg);
    expect(lean.daysToDry!.mid).toBeLessThan(rich.daysToDry!.mid);
  });

  test("days come with their range, and fewer of them in hotter weather", () => {
    const [mild] = got(compareMixes({ ...INPUT, et0MmPerDay: 3 }));
    const [hot] = got(compareMixes({ ...INPUT, et0MmPerDay: 7 }));
    const { low, mid, high } = mild.daysToDry!;
    expect(low).toBeLessThanOrEqual(mid);
    expect(mid).toBeLessThanOrEqual(high);
    expect(hot.daysToDry!.mid).toBeLessThan(mid);
  });

  test("a pot that loses nothing does not dry", () => {
    const [lean] = got(compareMixes({ ...INPUT, et0MmPerDay: 0 }));
    expect(lean.daysToDry).toBeNull();
  });

  test("the same mix twice is the same twice", () => {
    const [one, other] = got(compareMixes({ ...INPUT, mixes: [LEAN, LEAN] }));
    expect(one).toEqual(other);
  });

  test("faults of both mixes, the vessel and the weather are told together", () => {
    const came = compareMixes({
      ...INPUT,
      mixes: [mixOf({ sandd: 1 }), mixOf({ peat: 0 })],
      vessel: cylinder(-3),
      plant: { ...PLANT, canopyWidthCm: Number.NaN },
      et0MmPerDay: -1,
    });
    expect(problemsOf(came)).toEqual([
      { code: "unknown-component", path: "mixes.0.recipe.parts.0.component" },
      { code: "not-above-zero", path: "mixes.1.recipe.parts.0.parts" },
      { code: "not-above-zero", path: "vessel.heightCm" },
      { code: "below-zero", path: "et0MmPerDay" },
      { code: "below-zero", path: "plant.canopyWidthCm" },
    ]);
  });
});
