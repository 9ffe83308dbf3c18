import { describe, expect, it } from "vitest";
import { estimateOf, meansByKey, tQuantile975 } from "../../../../core/replay/score/estimate.ts";
import { addOutcome, brierOf, emptyReliability } from "../../../../core/replay/score/reliability.ts";

/** Student's t at 97.5 %, any table of the distribution; from-memory. Beyond 30 degrees ours is a correction, to 0.002. */
const T_TABLE = [
  { freedom: 1, t: 12.706, tolerance: 0.0005 },
  { freedom: 4, t: 2.776, tolerance: 0.0005 },
  { freedom: 10, t: 2.228, tolerance: 0.0005 },
  { freedom: 29, t: 2.045, tolerance: 0.0005 },
  { freedom: 40, t: 2.021, tolerance: 0.002 },
  { freedom: 60, t: 2.0, tolerance: 0.002 },
  { freedom: 120, t: 1.98, tolerance: 0.002 },
] as const;

describe("intervals", () => {
  it("has seven values", () => expect(T_TABLE).toHaveLength(7));

  it.each(T_TABLE)("t of $freedom degrees is $t", ({ freedom, t, tolerance }) => {
    expect(Math.abs(tQuantile975(freedom) - t)).toBeLessThanOrEqual(tolerance);
  });

  it("takes what shares a seed for one value", () => {
    const items = [
      { seed: 1, value: 2 },
      { seed: 1, value: 4 },
      { seed: 2, value: 5 },
    ];
    const means = meansByKey(items, { key: ({ seed }) => seed, value: ({ value }) => value });
    expect(means).toEqual([3, 5]);
    // Two values two apart: half width is t of one degree times one.
    expect(estimateOf(means)).toEqual({ mean: 4, halfWidth: expect.closeTo(12.706, 9), count: 2 });
    expect(estimateOf([7]).halfWidth).toBeNaN();
  });
});

describe("Brier score", () => {
  /** scoringrules test suite: forecast 0.271, no event, score 0.073441; read-in-source. */
  it("of one forecast", () => {
    const one = emptyReliability();
    addOutcome(one, 0.271, false);
    expect(brierOf(one)!.score).toBeCloseTo(0.073441, 12);
  });

  /** Decomposition example: 0.1 five times (1 event), 0.4 five times (2), 0.8 ten times (8); arithmetic of the definition. */
  it("of a set, beside the overall frequency's", () => {
    const set = emptyReliability();
    const add = (told: number, events: number, count: number) => {
      for (let k = 0; k < count; k++) addOutcome(set, told, k < events);
    };
    add(0.1, 1, 5);
    add(0.4, 2, 5);
    add(0.8, 8, 10);
    expect(brierOf(set)).toEqual({
      score: expect.closeTo(0.1825, 12),
      ofClimate: expect.closeTo(0.2475, 12),
    });
    expect(brierOf(emptyReliability())).toBeNull();
  });
});
