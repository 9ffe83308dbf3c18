import { describe, expect, it } from "vitest";
import { careAfter, careFrom } from "../../../core/plant/aftercare.ts";
import { woundHealingRate } from "../../../core/plant/wound-healing.ts";

/** WIGGINTON1974, abstract: rate of healing rises about threefold over each step. Status: read-in-source (abstract). */
const STEPS = [
  { fromC: 5, toC: 10, times: 3 },
  { fromC: 10, toC: 20, times: 3 },
] as const;

describe("wound healing of potato tubers", () => {
  it.each(STEPS)("$times times from $fromC to $toC °C", ({ fromC, toC, times }) => {
    expect(woundHealingRate(toC) / woundHealingRate(fromC)).toBeCloseTo(times, 9);
  });

  /**
   * Research, Society and Development 9(9), 2020, doi 10.33448/rsd-v9i9.6700: after 15 days no cork layer at 8 °C, all
   * layers at 14 and at 20 °C. Status: read-in-source (abstract). A wait of 7 days at 20 °C must agree.
   */
  it.each([
    [8, false],
    [14, true],
    [20, true],
  ] as const)("15 days at %i °C: closed is %s", (tempC, closed) => {
    const care = careFrom({ plantedUtcMs: 0, roots: "pruned", leafy: false, needDays: 7, wateredIn: false });
    const after = careAfter(care, { startUtcMs: 0, tempC: new Float64Array(15 * 24).fill(tempC) });
    expect(after.healedUtcMs !== null).toBe(closed);
  });

  it("never heals slower in the warmer of two", () => {
    for (let tempC = -10; tempC < 35; tempC += 0.5) {
      expect(woundHealingRate(tempC + 0.5)).toBeGreaterThanOrEqual(woundHealingRate(tempC));
    }
  });
});
