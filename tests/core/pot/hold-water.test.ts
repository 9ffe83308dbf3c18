import { describe, expect, test } from "vitest";
import { bareRetention } from "../../../core/mix/bare-retention.ts";
import { waterMlAtRest } from "../../../core/pot/hold-water.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { mixDepthCm, volumeMlBetween } from "../../../core/pot/vessel-shape.ts";
import { capacityFracOf, cylinder, heldFrac, worked } from "../mix/build-mix.ts";

/** Antiderivatives of z^k / sqrt(1 + (a z)^2), k = 0, 1, 2, from any table of integrals. */
function momentsOf(a: number, z: number): [number, number, number] {
  const root = Math.sqrt(1 + (a * z) ** 2);
  const arc = Math.asinh(a * z);
  return [arc / a, root / a ** 2, (z * root) / (2 * a ** 2) - arc / (2 * a ** 3)];
}

/**
 * Water in a frustum for n = 2, in closed form: the width is linear in the height, so the area is a quadratic and
 * each term has an antiderivative.
 */
function closedFormMl(curve: { r: number; s: number; a: number }, vessel: Vessel): number {
  const saucer = vessel.saucerCm ?? 0;
  const face = vessel.shape === "round" ? Math.PI / 4 : 1;
  const slope = (vessel.topCm - vessel.baseCm) / vessel.heightCm;
  const start = vessel.baseCm + slope * saucer;
  const area = [face * start ** 2, 2 * face * start * slope, face * slope ** 2];
  const high = momentsOf(curve.a, vessel.heightCm - saucer);
  const low = momentsOf(curve.a, 0);
  const drained = area.reduce((sum, c, k) => sum + c * (high[k]! - low[k]!), 0) * (curve.s - curve.r);
  const above = volumeMlBetween(vessel, { fromCm: saucer, toCm: vessel.heightCm });
  const below = volumeMlBetween(vessel, { fromCm: 0, toCm: saucer });
  return drained + curve.r * above + curve.s * below;
}

describe("water in a vessel at rest", () => {
  const vessels: Vessel[] = [
    cylinder(5),
    cylinder(40),
    { shape: "round", topCm: 30, baseCm: 18, heightCm: 27, material: "plastic" },
    { shape: "square", topCm: 12, baseCm: 10, heightCm: 9, material: "plastic", saucerCm: 2 },
    { shape: "round", topCm: 14, baseCm: 22, heightCm: 60, material: "plastic", saucerCm: 5 },
  ];
  const curves = [0.002, 0.04, 0.3, 2.5, 60].map((a) => ({ r: 0.1, s: 0.9, a }));

  test("agrees with the closed form for n = 2 to 1e-6 of the capacity, mild to very coarse, frustum and saucer", () => {
    let compared = 0;
    for (const vessel of vessels) {
      for (const curve of curves) {
        const { r, s, a } = curve;
        const retention = bareRetention({ residualFrac: r, saturatedFrac: s, alphaPerCm: a, n: 2 });
        const heldMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: -(vessel.saucerCm ?? 0) });
        const exactMl = closedFormMl(curve, vessel);
        expect(Math.abs(heldMl / exactMl - 1)).toBeLessThan(1e-6);
        compared++;
      }
    }
    expect(compared).toBe(25);
  });

  test("a curve that drops all at once holds what lies below the drop", () => {
    const steep = { residualFrac: 0, saturatedFrac: 0.5, alphaPerCm: 0.1, n: 200 };
    expect(capacityFracOf(steep, cylinder(20))).toBeCloseTo(0.25, 2);
  });

  /**
   * A tall cylinder without residual holds the whole area under the curve: saturated share / alpha x B(1/n, 1 - 2/n) / n,
   * the beta integral of any table; its values from the gamma function of Python's math module.
   */
  test.each([
    [4, 1.3110287771460596],
    [8, 1.0590783619739317],
    [30, 1.0037571071934368],
  ])("a fall of n = %d is seen wherever in the pot it lies", (n, areaOfOne) => {
    let compared = 0;
    for (const heightCm of [20, 30.14710799, 49.22]) {
      for (const alphaPerCm of [1.8, 8.74, 17.68, 59, 180]) {
        const curve = { residualFrac: 0, saturatedFrac: 0.8, alphaPerCm, n };
        const exactFrac = (0.8 * areaOfOne) / (alphaPerCm * heightCm);
        const aboveFrac = (0.8 * (alphaPerCm * heightCm) ** (1 - n)) / (n - 2);
        const off = Math.abs(capacityFracOf(curve, cylinder(heightCm)) - exactFrac);
        expect(off).toBeLessThan(1e-6 * exactFrac + aboveFrac);
        compared++;
      }
    }
    expect(compared).toBe(15);
  });

  test("a pot too wide for numbers is refused and not reckoned for ever", () => {
    const vessel = { ...cylinder(1e200), topCm: 1e200, baseCm: 1e200 };
    const retention = bareRetention({ residualFrac: 0.1, saturatedFrac: 0.8, alphaPerCm: 0.2, n: 1.8 });
    expect(() => waterMlAtRest({ retention, vessel, suctionAtBaseCm: 0 })).toThrow(RangeError);
  });

  test("more suction at the base never holds more, and a flooded pot is full", () => {
    const { retention } = worked({ peat: 2, perlite: 1 });
    const vessel = cylinder(15);
    const at = (suctionAtBaseCm: number) => waterMlAtRest({ retention, vessel, suctionAtBaseCm });
    const held = [-30, -15, -3, 0, 1, 10, 100, 1e4].map(at);
    expect(held).toEqual([...held].sort((a, b) => b - a));
    expect(at(-15)).toBeCloseTo(
      retention.saturatedFrac * volumeMlBetween(vessel, { fromCm: 0, toCm: 15 }),
      9,
    );
  });

  test("a rim gap and a top dressing take room from the mix, the deeper of the two counting", () => {
    expect(mixDepthCm(cylinder(15, { rimGapCm: 2 }))).toBe(13);
    expect(mixDepthCm(cylinder(15, { rimGapCm: 2, topDressingCm: 3 }))).toBe(12);
    expect(heldFrac(worked({ peat: 1 }), cylinder(15, { rimGapCm: 5 }))).toBeCloseTo(
      heldFrac(worked({ peat: 1 }), cylinder(10)),
      9,
    );
  });
});
