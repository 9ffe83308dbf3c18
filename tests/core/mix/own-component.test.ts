import { describe, expect, test } from "vitest";
import { cupCapacityFracOf } from "../../../core/mix/curve-fit.ts";
import { curveWaterFrac } from "../../../core/mix/curve-water.ts";
import { COMPONENTS, componentsById } from "../../../core/mix/library.ts";
import { mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { type ComponentDraft, ownComponent } from "../../../core/mix/own-component.ts";
import { cylinder, got, mixOf, problemsOf } from "./build-mix.ts";

const BRICK: ComponentDraft = { id: "brick-chips", grain: "coarse", role: "draining", compost: false };

describe("a grower's own component", () => {
  test("what cannot be bracketed is asked for, all of it at once", () => {
    expect(problemsOf(ownComponent({ id: "Brick chips" }))).toEqual([
      { code: "not-a-plain-name", path: "id" },
      { code: "asked-for", path: "grain" },
      { code: "asked-for", path: "role" },
      { code: "asked-for", path: "compost" },
    ]);
  });

  test("a density that relatives leave wide open is asked for: a litre is soon weighed", () => {
    const bog: ComponentDraft = { id: "bog", grain: "fine", role: "holding", compost: false };
    expect(problemsOf(ownComponent(bog))).toEqual([{ code: "asked-for", path: "dryDensityKgPerL" }]);
    expect(ownComponent({ ...bog, dryDensityKgPerL: 0.1 }).ok).toBe(true);
  });

  test("figures without a value get the relatives' whole span and a note each, never a silent guess", () => {
    const { component, notes } = got(ownComponent({ ...BRICK, dryDensityKgPerL: 0.9 }));
    expect(notes.map(({ code, path }) => [code, path.join(".")])).toEqual([
      ["bracketed", "totalPorosityFrac"],
      ["bracketed", "cupCapacityFrac"],
    ]);
    const relatives = COMPONENTS.filter(({ role, grain }) => role === "draining" && grain === "coarse");
    expect(notes[1]!.data).toMatchObject({ relatives: relatives.map(({ id }) => id) });
    const cups = relatives.map(({ cupCapacityFrac }) => cupCapacityFrac!);
    expect(component.cupCapacityFrac!.low).toBe(Math.min(...cups.map(({ low }) => low)));
    expect(component.cupCapacityFrac!.high).toBe(Math.max(...cups.map(({ high }) => high)));
    expect(component.status).toBe("own");
  });

  test("pores are bracketed no wider than the weight allows", () => {
    const { component } = got(ownComponent({ ...BRICK, dryDensityKgPerL: 1.2 }));
    expect(component.totalPorosityFrac.high).toBeLessThanOrEqual(1 - 1.2 / 3 + 1e-12);
    expect(component.totalPorosityFrac.low).toBeLessThanOrEqual(component.totalPorosityFrac.mid);
  });

  test("a measured cup is met by the curve and narrows the range", () => {
    const { component, notes } = got(
      ownComponent({ ...BRICK, dryDensityKgPerL: 0.9, cupCapacityFrac: 0.22 }),
    );
    expect(cupCapacityFracOf(component.curve)).toBeCloseTo(0.22, 6);
    expect(component.cupCapacityFrac!.high).toBeCloseTo(0.25, 9);
    expect(notes.map(({ path }) => path[0])).toEqual(["totalPorosityFrac"]);
  });

  test.each(COMPONENTS)("three measured suctions give the curve back: $id", (known) => {
    const { component } = got(
      ownComponent({
        id: "own",
        grain: known.grain,
        role: known.role,
        compost: known.compost,
        dryDensityKgPerL: known.dryDensityKgPerL.mid,
        totalPorosityFrac: known.totalPorosityFrac.mid,
        waterAt10cmFrac: known.waterAt10cmFrac.mid,
        waterAt50cmFrac: known.waterAt50cmFrac.mid,
        waterAt100cmFrac: known.waterAt100cmFrac.mid,
      }),
    );
    for (const [suctionCm, expected] of [
      [10, known.waterAt10cmFrac.mid],
      [50, known.waterAt50cmFrac.mid],
      [100, known.waterAt100cmFrac.mid],
    ] as const) {
      expect(Math.abs(curveWaterFrac(component.curve, suctionCm) - expected)).toBeLessThan(0.003);
    }
  });

  test("every range that comes out is in order and mixes like any other", () => {
    for (const grain of ["fine", "medium", "coarse"] as const) {
      for (const role of ["draining", "holding"] as const) {
        for (const compost of [false, true]) {
          const { component } = got(ownComponent({ id: "own", grain, role, compost, dryDensityKgPerL: 0.4 }));
          const { dryDensityKgPerL, totalPorosityFrac, waterAt10cmFrac, waterAt50cmFrac, waterAt100cmFrac } =
            component;
          for (const { low, mid, high } of [
            dryDensityKgPerL,
            totalPorosityFrac,
            waterAt10cmFrac,
            waterAt50cmFrac,
            waterAt100cmFrac,
          ]) {
            expect(low).toBeLessThanOrEqual(mid);
            expect(mid).toBeLessThanOrEqual(high);
          }
          const mix = mixOf({ own: 1, peat: 1 });
          expect(mixInVessel({ mix, vessel: cylinder(15), components: componentsById([component]) }).ok).toBe(
            true,
          );
        }
      }
    }
  });

  test("figures that contradict each other are explained", () => {
    const told = {
      ...BRICK,
      dryDensityKgPerL: 2,
      totalPorosityFrac: 0.5,
      waterAt10cmFrac: 0.3,
      waterAt50cmFrac: 0.4,
    };
    expect(problemsOf(ownComponent(told))).toEqual([
      { code: "wrong-order", path: "waterAt50cmFrac" },
      { code: "solids-too-dense", path: "dryDensityKgPerL" },
    ]);
    expect(problemsOf(ownComponent({ ...BRICK, dryDensityKgPerL: -1, cupCapacityFrac: 1.4 }))).toEqual([
      { code: "not-a-share", path: "cupCapacityFrac" },
      { code: "not-above-zero", path: "dryDensityKgPerL" },
    ]);
    expect(
      problemsOf(
        ownComponent({ ...BRICK, dryDensityKgPerL: 0.5, totalPorosityFrac: 0.3, cupCapacityFrac: 0.4 }),
      ),
    ).toEqual([{ code: "wrong-order", path: "cupCapacityFrac" }]);
  });
});
