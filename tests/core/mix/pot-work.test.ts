import { describe, expect, test } from "vitest";
import { componentsById } from "../../../core/mix/library.ts";
import { potWork, potWorkWithSteps } from "../../../core/mix/pot-work.ts";
import { parts, problemsOf } from "./build-mix.ts";

const VESSEL = { shape: "round", topCm: 20, baseCm: 14, heightCm: 18 } as const;
const LOAM = { residualFrac: 0.078, saturatedFrac: 0.43, alphaPerCm: 0.036, n: 1.56 };

describe("one pot worked out", () => {
  test("a mix gives all figures, a bare curve leaves out what only solids tell", () => {
    const mix = potWork({ mix: parts({ peat: 2, perlite: 1, grit: 1 }), vessel: VESSEL });
    const curve = potWork({ curve: LOAM, vessel: VESSEL });
    const shared = [
      "volumeMl",
      "capacityMl",
      "capacityFrac",
      "airSpaceFrac",
      "totalPorosityFrac",
      "usableMl",
      "wetLayerCm",
    ];
    expect(mix.ok && Object.keys(mix.value)).toEqual([
      ...shared,
      "dryDensityKgPerL",
      "shrinkFrac",
      "drainedMassKg",
    ]);
    expect(curve.ok && Object.keys(curve.value)).toEqual(shared);
    expect(curve).toMatchObject({ value: { totalPorosityFrac: 0.43 } });
  });

  test("mass is mix and water without the vessel", () => {
    const came = potWork({ mix: parts({ grit: 1 }), vessel: VESSEL });
    if (!came.ok) throw new Error("refused");
    const { volumeMl, capacityMl, dryDensityKgPerL, drainedMassKg } = came.value;
    expect(drainedMassKg).toBeCloseTo((volumeMl * dryDensityKgPerL! + capacityMl) / 1000, 12);
    expect(dryDensityKgPerL).toBe(1.5);
  });

  test("every fault is told at once, where it stands, an unknown name with the nearest ones", () => {
    const came = potWork({
      mix: [
        { component: "perlit", parts: 2 },
        { component: "grit", parts: 0 },
        { component: "peat", parts: -1 },
      ],
      vessel: { ...VESSEL, heightCm: -18, saucerCm: -1 },
    });
    expect(problemsOf(came)).toEqual([
      { code: "unknown-component", path: "mix.0.component" },
      { code: "not-above-zero", path: "mix.1.parts" },
      { code: "not-above-zero", path: "mix.2.parts" },
      { code: "not-above-zero", path: "vessel.heightCm" },
      { code: "below-zero", path: "vessel.saucerCm" },
    ]);
    const data = came.ok ? undefined : came.problems[0]!.data;
    expect(data).toMatchObject({ given: "perlit" });
    expect((data as { nearest: string[] }).nearest[0]).toBe("perlite");
  });

  test("no parts, a curve with n of 1 or less, crossed shares", () => {
    expect(problemsOf(potWork({ mix: [], vessel: VESSEL }))).toEqual([{ code: "no-parts", path: "mix" }]);
    for (const n of [1, 0.5, -2, Number.NaN]) {
      expect(problemsOf(potWork({ curve: { ...LOAM, n }, vessel: VESSEL }))).toEqual([
        { code: "n-not-above-one", path: "curve.n" },
      ]);
    }
    const crossed = { residualFrac: 0.5, saturatedFrac: 0.43, alphaPerCm: 0, n: 2 };
    expect(problemsOf(potWork({ curve: crossed, vessel: VESSEL }))).toEqual([
      { code: "residual-not-below-saturated", path: "curve.residualFrac" },
      { code: "not-above-zero", path: "curve.alphaPerCm" },
    ]);
    expect(
      problemsOf(potWork({ curve: { ...LOAM, saturatedFrac: 1.2, residualFrac: -0.1 }, vessel: VESSEL })),
    ).toEqual([
      { code: "not-a-share", path: "curve.residualFrac" },
      { code: "not-a-share", path: "curve.saturatedFrac" },
    ]);
  });

  test("either a mix or a curve, not both and not neither", () => {
    expect(problemsOf(potWork({ vessel: VESSEL }))).toEqual([{ code: "mix-or-curve-missing", path: "" }]);
    expect(problemsOf(potWork({ mix: parts({ peat: 1 }), curve: LOAM, vessel: VESSEL }))).toEqual([
      { code: "mix-and-curve", path: "" },
    ]);
  });

  /** With n = 2 the share of the pores still full is 1 / sqrt(1 + (alpha h)^2): 4/5 where alpha h is 3/4. */
  const HALVES = { residualFrac: 0.1, saturatedFrac: 0.6, n: 2 };

  test("the wet layer ends where a tenth of the volume is air, lifted by the saucer", () => {
    const curve = { ...HALVES, alphaPerCm: 0.25 };
    expect(potWork({ curve, vessel: VESSEL })).toMatchObject({ value: { wetLayerCm: expect.closeTo(3, 9) } });
    expect(potWork({ curve, vessel: { ...VESSEL, saucerCm: 2 } })).toMatchObject({
      value: { wetLayerCm: expect.closeTo(5, 9) },
    });
  });

  test("usable is what a pot holds less what is left at 1.5 MPa, 15 300 cm of water", () => {
    const came = potWork({ curve: { ...HALVES, alphaPerCm: 0.75 / 15_300 }, vessel: VESSEL });
    if (!came.ok) throw new Error("refused");
    expect(came.value.usableMl / came.value.volumeMl).toBeCloseTo(0.6 - (0.1 + 0.5 * 0.8), 6);
  });

  test("half of the water inside loose grains is usable, as chosen by us", () => {
    const came = potWork({ mix: parts({ pumice: 1 }), vessel: VESSEL });
    if (!came.ok) throw new Error("refused");
    const { residualFrac } = componentsById().get("pumice")!.curve;
    const leftMl = came.value.capacityMl - came.value.usableMl;
    expect(leftMl / came.value.volumeMl).toBeCloseTo(residualFrac / 2, 4);
  });

  test("a saucer raises what a straight pot holds as the closed form for n = 2 says", () => {
    const vessel = { shape: "square", topCm: 10, baseCm: 10, heightCm: 18, saucerCm: 3 } as const;
    const came = potWork({ curve: { ...HALVES, alphaPerCm: 0.25 }, vessel });
    const drainedCm = 0.1 * 15 + (0.5 * Math.asinh(0.25 * 15)) / 0.25;
    expect(came).toMatchObject({ value: { capacityMl: expect.closeTo(100 * (0.6 * 3 + drainedCm), 5) } });
  });

  test("the steps by hand: a straight pot in a saucer under the closed form for n = 2", () => {
    const vessel = { shape: "square", topCm: 10, baseCm: 10, heightCm: 18, saucerCm: 3 } as const;
    const input = { curve: { ...HALVES, alphaPerCm: 0.25 }, vessel };
    const came = potWorkWithSteps(input);
    if (!came.ok) throw new Error("refused");
    const { steps, ...figures } = came.value;
    expect({ ok: true, value: figures }).toEqual(potWork(input));
    const step = Object.fromEntries(steps.map(({ name, value }) => [name, value]));
    expect(step).toMatchObject({
      volumeMl: 1800,
      suctionAtBaseCm: -3,
      waterAtBaseFrac: 0.6,
      waterAtMiddleFrac: expect.closeTo(0.1 + 0.5 / Math.hypot(1, 0.25 * 6), 12),
      waterAtRimFrac: expect.closeTo(0.1 + 0.5 / Math.hypot(1, 0.25 * 15), 12),
      unusableFrac: expect.closeTo(0.1 + 0.5 / Math.hypot(1, 0.25 * 15_300), 12),
      airySuctionCm: expect.closeTo(3, 9),
      wetLayerCm: expect.closeTo(6, 9),
    });
    expect(steps.every(({ unit, equation }) => unit !== "" && equation !== "")).toBe(true);
  });

  test("a mix's steps hold its shrinkage, density and mass; a suction never reached is left out", () => {
    const names = (came: ReturnType<typeof potWorkWithSteps>) =>
      came.ok ? came.value.steps.map(({ name }) => name) : [];
    const ofMix = names(potWorkWithSteps({ mix: parts({ peat: 2, grit: 1 }), vessel: VESSEL }));
    expect(ofMix).toEqual(expect.arrayContaining(["shrinkFrac", "dryDensityKgPerL", "drainedMassKg"]));
    const tight = { residualFrac: 0.5, saturatedFrac: 0.55, alphaPerCm: 0.1, n: 2 };
    const ofTight = names(potWorkWithSteps({ curve: tight, vessel: VESSEL }));
    expect(ofTight).toContain("wetLayerCm");
    expect(ofTight).not.toContain("airySuctionCm");
  });

  test("parts beyond counting are refused, and so is a pot beyond building", () => {
    const huge = parts({ peat: 1e308, grit: 1e308 });
    expect(problemsOf(potWork({ mix: huge, vessel: { ...VESSEL, topCm: 1e200 } }))).toEqual([
      { code: "too-large", path: "mix.0.parts" },
      { code: "too-large", path: "mix.1.parts" },
      { code: "too-large", path: "vessel.topCm" },
    ]);
  });

  test("a base wider than the rim is reckoned, for the shape may be meant", () => {
    expect(potWork({ curve: LOAM, vessel: { ...VESSEL, baseCm: 26 } }).ok).toBe(true);
  });

  test("deeper and wider, taller and shallower: the same mix in one volume differs visibly", () => {
    const mix = parts({ peat: 3, "coarse-sand": 1 });
    const bowl = potWork({ mix, vessel: { shape: "round", topCm: 34, baseCm: 26, heightCm: 7 } });
    const deep = potWork({ mix, vessel: { shape: "round", topCm: 15, baseCm: 14, heightCm: 30 } });
    if (!bowl.ok || !deep.ok) throw new Error("refused");
    expect(Math.abs(bowl.value.volumeMl / deep.value.volumeMl - 1)).toBeLessThan(0.01);
    expect(bowl.value.capacityFrac).toBeGreaterThan(deep.value.capacityFrac * 1.2);
    expect(deep.value.airSpaceFrac).toBeGreaterThan(bowl.value.airSpaceFrac * 1.5);
  });
});
