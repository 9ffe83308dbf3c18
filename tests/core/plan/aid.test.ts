import { describe, expect, it } from "vitest";
import { aidedHarm } from "../../../core/plan/aid/aided-harm.ts";

const home = (wind: number[], cold: number[] = []) => ({
  wind: Float64Array.from(wind),
  cold: Float64Array.from(cold),
});
const sum = (column: Float64Array | undefined) => column?.reduce((all, harm) => all + harm, 0) ?? 0;

/** A brace takes four fifths of the wind for two fifths of a trip; with a trip worth 4 thousandths that is 0.0016. */
describe("harm at home with the aid that pays there", () => {
  const settings = { tripWorth: 4 };

  it("is what the aid leaves and its trouble, laid on the days by their harm", () => {
    const { wind } = aidedHarm(home([0, 0.09, 0.03]), settings);
    expect(sum(wind)).toBeCloseTo(0.12 * 0.2 + 0.0016, 12);
    expect(wind![1]! / wind![2]!).toBeCloseTo(3, 12);
    expect(wind![0]).toBe(0);
  });

  it("is as it was where the trouble is more than the aid saves, and never more", () => {
    expect(sum(aidedHarm(home([0.001]), settings).wind)).toBe(0.001);
    for (const harm of [1e-6, 0.002, 0.003, 0.5])
      expect(sum(aidedHarm(home([harm]), settings).wind)).toBeLessThanOrEqual(harm);
  });

  it("falls with the price of a trip by less than a carry does, so that a lower price makes no carry lapse", () => {
    const at = (tripWorth: number) => sum(aidedHarm(home([0.05]), { tripWorth }).wind);
    const carry = (tripWorth: number) => (2 * tripWorth) / 1000;
    for (const tripWorth of [1, 2, 4, 8, 16, 32])
      if (carry(tripWorth) < at(tripWorth)) expect(carry(tripWorth / 2)).toBeLessThan(at(tripWorth / 2));
  });
});
