import { describe, expect, it } from "vitest";
import {
  aftercareNow,
  type Care,
  careAfter,
  careFrom,
  rootsFracOf,
  soaked,
} from "../../../core/plant/aftercare.ts";
import { dryDays } from "../../../core/plant/care-days.ts";

const DAY = 86_400_000;
const planting = { plantedUtcMs: 0, roots: "pruned", leafy: false, needDays: 7, wateredIn: false } as const;

function days(care: Care, count: number, tempC: number, fromDay = 0): Care {
  return careAfter(care, { startUtcMs: fromDay * DAY, tempC: new Float64Array(count * 24).fill(tempC) });
}
const now = (care: Care, day: number, expectedTempC = 20) =>
  aftercareNow(care, { utcMs: day * DAY, expectedTempC });

describe("aftercare", () => {
  it("keeps a pruned succulent dry for a week at 20 °C", () => {
    const care = days(careFrom(planting), 3, 20);
    const at = now(care, 3);
    expect(at.stage).toBe("dry");
    expect(at.healedFrac).toBeCloseTo(3 / 7, 9);
    expect(at.dryUntilUtcMs / DAY).toBeCloseTo(7, 6);
    expect(now(days(careFrom(planting), 8, 20), 8).stage).toBe("first-drink");
  });

  it("takes three times as long at 10 °C, and moves its date when it turns cool", () => {
    const care = careFrom(planting);
    expect(now(care, 0, 20).dryUntilUtcMs / DAY).toBeCloseTo(7, 6);
    expect(now(care, 0, 10).dryUntilUtcMs / DAY).toBeCloseTo(21, 6);
    expect(now(care, 0, 10).slowedBy).toBeCloseTo(3, 9);
    expect(days(care, 20, 10).healedUtcMs).toBeNull();
    expect(days(care, 22, 10).healedUtcMs).not.toBeNull();
  });

  it("begins the wait anew when the open cut is soaked", () => {
    const care = soaked(days(careFrom(planting), 5, 20), 5 * DAY);
    const at = now(care, 5);
    expect(at.stage).toBe("dry");
    expect(at.soakedUtcMs).toBe(5 * DAY);
    expect(at.dryUntilUtcMs / DAY).toBeCloseTo(12, 6);
  });

  it("takes the first soaking after the wait as the first drink, then eases in, then is done", () => {
    const healed = days(careFrom(planting), 8, 20);
    const drunk = soaked(healed, 8 * DAY);
    expect(drunk.firstDrinkUtcMs).toBe(8 * DAY);
    const eased = now(drunk, 9);
    expect(eased.stage).toBe("easing");
    expect(eased.shadeUntilUtcMs).toBeGreaterThanOrEqual(eased.dryUntilUtcMs);
    expect(eased.noFeedUntilUtcMs).toBe(28 * DAY);
    expect(now(drunk, 60).stage).toBe("done");
  });

  it("gives back sun step by step", () => {
    const drunk = soaked(days(careFrom(planting), 8, 20), 8 * DAY);
    const sun = [5, 12, 16, 20, 30].map((day) => now(drunk, day).sunFrac);
    expect([...sun].sort((a, b) => a - b)).toEqual(sun);
    expect(sun.at(-1)).toBe(1);
    expect(sun[0]).toBeLessThan(0.5);
  });

  it("waters leafy plants in at once", () => {
    expect(dryDays({ roots: "bare-root", leafy: true }, [])).toBe(0);
    const leafy = careFrom({ ...planting, leafy: true, needDays: 0 });
    expect(now(leafy, 0).stage).toBe("first-drink");
    expect(now(careFrom({ ...planting, leafy: true, needDays: 0, wateredIn: true }), 0).stage).toBe("easing");
  });

  it("lets the plant's own rule go before the house's, and the house's before common practice", () => {
    const kind = { roots: "pruned", leafy: false } as const;
    expect(dryDays(kind, [undefined, undefined])).toBe(7);
    expect(dryDays(kind, [undefined, { pruned: 5 }])).toBe(5);
    expect(dryDays(kind, [{ pruned: 3 }, { pruned: 5 }])).toBe(3);
    expect(dryDays(kind, [{ teased: 1 }, undefined])).toBe(7);
  });

  it("keeps rougher work dry longer", () => {
    const order = (["undisturbed", "teased", "pruned", "bare-root", "rot-surgery"] as const).map((roots) =>
      dryDays({ roots, leafy: false }, []),
    );
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it("gives lost roots back with warm days, never while the cut is open", () => {
    const open = days(careFrom(planting), 5, 20);
    expect(rootsFracOf(open)).toBe(0.6);
    const later = days(careFrom(planting), 28, 20);
    expect(rootsFracOf(later)).toBeCloseTo(0.8, 9);
    expect(rootsFracOf(days(careFrom(planting), 80, 20))).toBe(1);
  });

  it("does not put a date beyond half a year in the cold", () => {
    expect(now(careFrom(planting), 0, 2).dryUntilUtcMs / DAY).toBeLessThanOrEqual(180);
  });
});
