import { describe, expect, test } from "vitest";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { vesselProblems, vesselQuestions } from "../../../core/pot/vessel-checks.ts";
import { dressingMassKg, emptyVesselMassKg } from "../../../core/pot/vessel-mass.ts";
import { saucerMl } from "../../../core/pot/vessel-saucer.ts";
import { areaCm2At, volumeMlBetween, wallAreaCm2To, widthCmAt } from "../../../core/pot/vessel-shape.ts";
import { mlFromMm, mmFromMl } from "../../../core/pot/water-units.ts";

const POT: Vessel = { shape: "round", topCm: 20, baseCm: 14, heightCm: 18, material: "plastic" };

describe("the shape of a vessel", () => {
  test("round: a cone frustum of radii 10 and 7 and height 18, by the schoolbook formula", () => {
    expect(volumeMlBetween(POT, { fromCm: 0, toCm: 18 })).toBeCloseTo(
      (Math.PI * 18 * (100 + 70 + 49)) / 3,
      9,
    );
    expect(wallAreaCm2To(POT, 18)).toBeCloseTo(Math.PI * 17 * Math.hypot(18, 3), 9);
    expect(areaCm2At(POT, 18)).toBeCloseTo(Math.PI * 100, 9);
    expect(widthCmAt(POT, 9)).toBe(17);
  });

  test("square: a cube of 10 cm is a litre with four walls of 100 cm2", () => {
    const cube: Vessel = { shape: "square", topCm: 10, baseCm: 10, heightCm: 10, material: "wood" };
    expect(volumeMlBetween(cube, { fromCm: 0, toCm: 10 })).toBeCloseTo(1000, 9);
    expect(wallAreaCm2To(cube, 10)).toBeCloseTo(400, 9);
  });

  test("parts of the height add up to the whole", () => {
    const whole = volumeMlBetween(POT, { fromCm: 0, toCm: 18 });
    const cuts = volumeMlBetween(POT, { fromCm: 0, toCm: 5 }) + volumeMlBetween(POT, { fromCm: 5, toCm: 18 });
    expect(cuts).toBeCloseTo(whole, 9);
  });

  test("the saucer holds the ring between base and rim, to its depth; none without one", () => {
    expect(saucerMl({ ...POT, saucerCm: 2 })).toBeCloseTo(2 * Math.PI * (100 - 49), 9);
    expect(saucerMl(POT)).toBe(0);
    expect(saucerMl({ ...POT, topCm: 14, saucerCm: 2 })).toBeGreaterThan(0);
  });

  test("the grower's own weight stands; else clay weighs many times plastic, and stone on top counts", () => {
    expect(emptyVesselMassKg({ ...POT, emptyMassKg: 0.31 })).toBe(0.31);
    expect(emptyVesselMassKg({ ...POT, material: "unglazed" })).toBeGreaterThan(8 * emptyVesselMassKg(POT));
    expect(dressingMassKg(POT)).toBe(0);
    expect(dressingMassKg({ ...POT, topDressingCm: 1 })).toBeCloseTo(0.45, 1);
  });

  test("1 mm on 1 m2 is a litre, and back", () => {
    expect(mlFromMm(1, 10_000)).toBeCloseTo(1000, 9);
    expect(mmFromMl({ waterMl: 1000, areaCm2: 10_000 })).toBeCloseTo(1, 12);
  });
});

describe("what is wrong with a vessel", () => {
  const codes = (vessel: Vessel) =>
    vesselProblems(vessel, ["vessel"]).map(({ code, path }) => `${code} ${path.join(".")}`);

  test("a usual pot has neither problems nor questions", () => {
    expect(codes({ ...POT, rimGapCm: 2, saucerCm: 2, topDressingCm: 1, emptyMassKg: 0.2 })).toEqual([]);
    expect(vesselQuestions(POT)).toEqual([]);
  });

  test("every fault is told at once", () => {
    expect(codes({ ...POT, topCm: -20, baseCm: Number.NaN, heightCm: 0, saucerCm: -1 })).toEqual([
      "not-above-zero vessel.topCm",
      "not-above-zero vessel.baseCm",
      "not-above-zero vessel.heightCm",
      "below-zero vessel.saucerCm",
    ]);
    expect(codes({ ...POT, shape: "oval" as "round" })).toEqual(["unknown-shape vessel.shape"]);
  });

  test("a slip of the keys is told: no pot is ten metres wide", () => {
    expect(codes({ ...POT, topCm: 1001, heightCm: 1e200, saucerCm: 1e300 })).toEqual([
      "too-large vessel.topCm",
      "too-large vessel.heightCm",
      "too-large vessel.saucerCm",
    ]);
    expect(codes({ ...POT, topCm: 1000 })).toEqual([]);
  });

  test("a gap or a dressing as deep as the pot leaves no room for mix", () => {
    expect(codes({ ...POT, rimGapCm: 18 })).toEqual(["no-room-for-mix vessel.rimGapCm"]);
    expect(codes({ ...POT, topDressingCm: 20 })).toEqual(["no-room-for-mix vessel.topDressingCm"]);
  });

  test("a base wider than the rim, and a saucer as deep as the pot, are asked about and not refused", () => {
    const bulging = { ...POT, baseCm: 24, saucerCm: 18 };
    expect(codes(bulging)).toEqual([]);
    expect(vesselQuestions(bulging, ["vessel"])).toEqual([
      { code: "base-wider-than-rim", path: ["vessel", "baseCm"], data: { topCm: 20, baseCm: 24 } },
      { code: "saucer-as-deep-as-pot", path: ["vessel", "saucerCm"], data: { saucerCm: 18, heightCm: 18 } },
    ]);
  });
});
