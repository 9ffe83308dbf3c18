import { describe, expect, test } from "vitest";
import { bareRetention } from "../../../core/mix/bare-retention.ts";
import { COMPONENTS, componentsById } from "../../../core/mix/library.ts";
import { nearestNames } from "../../../core/mix/nearest-names.ts";
import { range } from "../../../core/mix/range.ts";
import { waterFracAt } from "../../../core/mix/retention.ts";
import { SOURCES } from "../../../core/sources.ts";
import { cylinder, heldFrac, worked } from "./build-mix.ts";

const IDS = [
  "coco-peat",
  "coco-chips",
  "peat",
  "pine-bark-fine",
  "pine-bark-coarse",
  "perlite",
  "pumice",
  "lava",
  "expanded-clay",
  "calcined-clay",
  "grit",
  "coarse-sand",
  "fine-sand",
  "rice-hulls",
  "charcoal",
  "vermicompost",
  "leaf-mould",
  "composted-manure",
  "garden-loam",
  "vermiculite",
];

describe("the library of components", () => {
  test("holds the twenty components, each once", () => {
    expect(COMPONENTS.map(({ id }) => id).sort()).toEqual([...IDS].sort());
  });

  test.each(COMPONENTS)("$id is physically possible", (component) => {
    const { waterAt10cmFrac, waterAt50cmFrac, waterAt100cmFrac, totalPorosityFrac, dryDensityKgPerL, curve } =
      component;
    for (const end of ["low", "mid", "high"] as const) {
      expect(waterAt10cmFrac[end]).toBeGreaterThanOrEqual(waterAt50cmFrac[end]);
      expect(waterAt50cmFrac[end]).toBeGreaterThanOrEqual(waterAt100cmFrac[end]);
    }
    expect(curve.saturatedFrac).toBeLessThanOrEqual(totalPorosityFrac.mid);
    expect(curve.residualFrac).toBeLessThan(curve.saturatedFrac);
    expect(curve.n).toBeGreaterThan(1);
    // No solid in use is denser than basalt and quartz, 2.7 to 2.9 kg/L.
    expect(dryDensityKgPerL.mid / (1 - totalPorosityFrac.mid)).toBeLessThan(2.9);
  });

  test.each(COMPONENTS)("$id: the curve passes its own three suctions and its cup", (component) => {
    const retention = bareRetention(component.curve);
    expect(Math.abs(waterFracAt(retention, 10) - component.waterAt10cmFrac.mid)).toBeLessThan(0.002);
    expect(Math.abs(waterFracAt(retention, 50) - component.waterAt50cmFrac.mid)).toBeLessThan(0.002);
    expect(Math.abs(waterFracAt(retention, 100) - component.waterAt100cmFrac.mid)).toBeLessThan(0.002);
    const cup = heldFrac(worked({ [component.id]: 1 }), cylinder(9));
    expect(Math.abs(cup - component.cupCapacityFrac!.mid)).toBeLessThan(0.002);
  });

  test.each(COMPONENTS)(
    "$id names sources that exist, or says that it is from memory",
    ({ sources, status }) => {
      for (const key of sources) expect(Object.keys(SOURCES)).toContain(key);
      if (status !== "from-memory") expect(sources.length).toBeGreaterThan(0);
    },
  );

  test("a grower's own component stands beside the library's, or in the place of one", () => {
    const peat = componentsById().get("peat")!;
    const own = { ...peat, id: "bog-peat" };
    expect(componentsById([own]).size).toBe(IDS.length + 1);
    const inPlace = componentsById([{ ...peat, status: "own" as const }]);
    expect(inPlace.size).toBe(IDS.length);
    expect(inPlace.get("peat")!.status).toBe("own");
  });

  test("a range out of order is a programmer's error", () => {
    expect(() => range(0.5, 0.4, 0.6)).toThrow(RangeError);
  });
});

describe("nearest names", () => {
  test.each([
    ["peet", "peat"],
    ["Coco Peat", "coco-peat"],
    ["perlit", "perlite"],
    ["leca", "expanded-clay"],
    ["scoria", "lava"],
    ["sand", "coarse-sand"],
    ["pine_bark", "pine-bark-fine"],
    ["vermicompst", "vermicompost"],
  ])("%s: %s comes first", (given, expected) => {
    const names = nearestNames(given, componentsById().keys());
    expect(names.length).toBe(3);
    expect(names[0]).toBe(expected);
  });

  test("bark offers both barks", () => {
    expect(nearestNames("bark", componentsById().keys()).slice(0, 2)).toEqual([
      "pine-bark-fine",
      "pine-bark-coarse",
    ]);
  });
});
