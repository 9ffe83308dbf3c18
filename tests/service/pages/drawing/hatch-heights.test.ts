import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { airlessToCm, hatchHeights } from "../../../../service/pages/drawing/hatch-heights.ts";

const CUTS = 41;

/** A profile whose water falls straight from the base to the surface; pores are 0.6 of the volume. */
function straightProfile(of: { depthCm: number; baseFrac: number; topFrac: number }) {
  const heightCm = Float64Array.from({ length: CUTS }, (_, i) => (of.depthCm * i) / (CUTS - 1));
  const waterFrac = heightCm.map((h) => of.baseFrac + ((of.topFrac - of.baseFrac) * h) / of.depthCm);
  return { heightCm, waterFrac, airFrac: waterFrac.map((frac) => 0.6 - frac) };
}

const shares = fc.record({
  depthCm: fc.double({ min: 5, max: 60, noNaN: true }),
  baseFrac: fc.double({ min: 0, max: 0.6, noNaN: true }),
  topFrac: fc.double({ min: 0, max: 0.6, noNaN: true }),
});

describe("hatch lines", () => {
  it("are as many as the depth of water has line depths", () => {
    fc.assert(
      fc.property(shares, fc.double({ min: 1, max: 10, noNaN: true }), (shape, lineMm) => {
        const depthOfWaterMm = (10 * shape.depthCm * (shape.baseFrac + shape.topFrac)) / 2;
        const lines = hatchHeights(straightProfile(shape), { lineMm, fromCm: 0 });
        expect(Math.abs(lines.length - depthOfWaterMm / lineMm)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("rise, lie inside the mix, and are none where it is dry", () => {
    fc.assert(
      fc.property(shares, (shape) => {
        const lines = hatchHeights(straightProfile(shape), { lineMm: 3, fromCm: 0 });
        for (const [i, height] of lines.entries()) {
          expect(height).toBeGreaterThan(lines[i - 1] ?? 0);
          expect(height).toBeLessThanOrEqual(shape.depthCm + 1e-9);
        }
      }),
    );
    expect(
      hatchHeights(straightProfile({ depthCm: 20, baseFrac: 0, topFrac: 0 }), { lineMm: 3, fromCm: 0 }),
    ).toEqual([]);
  });

  it("lie evenly in an even mix and closer where it is wetter", () => {
    const even = hatchHeights(straightProfile({ depthCm: 20, baseFrac: 0.3, topFrac: 0.3 }), {
      lineMm: 3,
      fromCm: 0,
    });
    for (const [i, height] of even.entries()) expect(height).toBeCloseTo(i + 1, 9);
    const falling = hatchHeights(straightProfile({ depthCm: 20, baseFrac: 0.5, topFrac: 0.1 }), {
      lineMm: 3,
      fromCm: 0,
    });
    const gaps = falling.slice(1).map((height, i) => height - falling[i]!);
    expect(gaps).toEqual([...gaps].sort((a, b) => a - b));
  });
});

describe("the airless layer", () => {
  it("ends where air reaches a tenth, straight between the cuts", () => {
    const profile = straightProfile({ depthCm: 20, baseFrac: 0.6, topFrac: 0.2 });
    expect(airlessToCm(profile)).toBeCloseTo(5, 9);
  });

  it("is nothing when the base breathes, and all when nothing does", () => {
    expect(airlessToCm(straightProfile({ depthCm: 20, baseFrac: 0.4, topFrac: 0.1 }))).toBe(0);
    expect(airlessToCm(straightProfile({ depthCm: 20, baseFrac: 0.58, topFrac: 0.58 }))).toBe(20);
  });
});
