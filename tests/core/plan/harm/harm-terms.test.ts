import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { harmOfNight, weightOfNight } from "../../../../core/plan/harm/cold.ts";
import { harmOfDimDay } from "../../../../core/plan/harm/gloom.ts";
import { harmOfHotHour } from "../../../../core/plan/harm/heat.ts";
import { harmOfDrought } from "../../../../core/plan/harm/thirst.ts";
import { harmOfGust, sailOf, tippedShare, tippingGustMPerS } from "../../../../core/plan/harm/toppling.ts";
import {
  coldness,
  harmOfColdNights,
  weightOfColdNights,
  weightOfColdness,
} from "../../../../core/plan/harm/wet-cold.ts";
import { harmOfWetHours, paceAt } from "../../../../core/plan/harm/wet-roots.ts";

/** Shapes of the harms, each 1 = the plant as good as lost. Chosen by us where no source stands; the order is the trade's. */
const values = (min: number, max: number) => fc.double({ min, max, noNaN: true });

function neverFalls(harm: (x: number) => number, range: readonly [number, number]): void {
  fc.assert(
    fc.property(values(...range), values(...range), (a, b) => {
      expect(harm(Math.max(a, b))).toBeGreaterThanOrEqual(harm(Math.min(a, b)) - 1e-12);
    }),
  );
}

/** Each further step counts at least as much as the one before: what a degree under cover saves never falls. */
function neverFlattens(weight: (x: number) => number, range: readonly [number, number]): void {
  fc.assert(
    fc.property(values(...range), values(...range), values(0, 3), (a, b, step) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)];
      const gainAt = (x: number) => weight(x + step) - weight(x);
      expect(gainAt(high)).toBeGreaterThanOrEqual(gainAt(low) - 1e-9);
    }),
  );
}

describe("cold", () => {
  const rose = { damageC: 4.4, killC: 0 };
  it("nothing above the line of damage, the whole plant at the killing frost, never less by a colder night", () => {
    expect(harmOfNight(4.4, rose)).toBe(0);
    expect(harmOfNight(0, rose)).toBeCloseTo(1, 12);
    expect(harmOfNight(4, rose)).toBeLessThan(0.1);
    neverFalls((x) => harmOfNight(-x, rose), [-10, 15]);
  });

  it("weighs the same to the kill, and from the first damage on each degree at least as much as the one before", () => {
    for (const minC of [8, 4.4, 3, 1, 0]) expect(weightOfNight(minC, rose)).toBe(harmOfNight(minC, rose));
    neverFlattens((x) => weightOfNight(-x, rose), [-4.39, 20]);
  });
});

describe("heat and gloom", () => {
  it("heat harms only above the limit and in the sun", () => {
    const hour = { tempC: 44, lightMjPerM2: 3, limitC: 38 };
    expect(harmOfHotHour({ ...hour, tempC: 38 })).toBe(0);
    expect(harmOfHotHour({ ...hour, lightMjPerM2: 0 })).toBe(0);
    neverFalls((tempC) => harmOfHotHour({ ...hour, tempC }), [20, 60]);
  });

  it("a dark day harms a growing plant more than a resting one, and months of it as much as a loss", () => {
    const dark = { lightMjPerM2: 0, needMjPerM2: 8, restingShareFrac: 0, leaflessIsRest: false };
    expect(harmOfDimDay({ ...dark, lightMjPerM2: 8 })).toBe(0);
    expect(harmOfDimDay(dark)).toBeGreaterThan(harmOfDimDay({ ...dark, restingShareFrac: 1 }));
    expect(harmOfDimDay({ ...dark, restingShareFrac: 1 })).toBeGreaterThan(0);
    expect(270 * harmOfDimDay(dark)).toBeGreaterThan(1);
  });

  // Common practice: leafless plants are wintered in dark cellars, others at a window with a third of summer's light.
  it("a plant that stands leafless at rest needs no light, and one with a third of the light for growth only waits", () => {
    const dark = { lightMjPerM2: 0, needMjPerM2: 9, restingShareFrac: 1, leaflessIsRest: true };
    expect(harmOfDimDay(dark)).toBe(0);
    const window = { ...dark, lightMjPerM2: 3, restingShareFrac: 0 };
    expect(harmOfDimDay(window)).toBe(0);
    expect(harmOfDimDay({ ...window, lightMjPerM2: 1.5 })).toBeGreaterThan(0);
  });
});

describe("thirst", () => {
  it("grows slowly to the days that a group stands, fast beyond, and never past the plant", () => {
    expect(harmOfDrought(0)).toBe(0);
    expect(harmOfDrought(1)).toBeLessThan(0.1);
    expect(harmOfDrought(2)).toBeGreaterThan(5 * harmOfDrought(1));
    neverFalls(harmOfDrought, [0, 30]);
    expect(harmOfDrought(30)).toBeLessThanOrEqual(1);
  });
});

/** Two days of flooding made a resistant shrub open to root rot. [BLAKER1981, the one published figure] */
describe("wet roots", () => {
  it("nothing within the hours that a group stands, then more by the hour, quicker in cold and in warm mix", () => {
    expect(harmOfWetHours(1)).toBe(0);
    expect(harmOfWetHours(2)).toBeGreaterThan(0.05);
    neverFalls(harmOfWetHours, [0, 20]);
    expect(paceAt(18)).toBe(1);
    expect(paceAt(4)).toBeGreaterThan(1);
    expect(paceAt(33)).toBeGreaterThan(1);
  });
});

/** Growers report rot after several wet days in nights below 15.6 °C (60 °F), and stop water below 10 °C (50 °F). */
describe("wet and cold", () => {
  it("counts nothing at 60 °F, fully at 50 °F; a night or two cost little and a fortnight most", () => {
    const limits = { stopC: 10, cutC: 15.6 };
    expect(coldness(15.6, limits)).toBe(0);
    expect(coldness(10, limits)).toBe(1);
    neverFalls((x) => coldness(-x, limits), [-20, 10]);
    expect(harmOfColdNights(1)).toBeLessThan(0.02);
    expect(harmOfColdNights(14)).toBeGreaterThan(0.5);
    neverFalls(harmOfColdNights, [0, 40]);
  });

  it("weighs the same for a week of such nights, and each further night or degree at least as much as the one before", () => {
    const limits = { stopC: 10, cutC: 15.6 };
    for (const nights of [0, 1, 7]) expect(weightOfColdNights(nights)).toBe(harmOfColdNights(nights));
    for (const nightC of [20, 12, 10, 6])
      expect(weightOfColdness(nightC, limits)).toBe(coldness(nightC, limits));
    neverFlattens(weightOfColdNights, [0, 40]);
    neverFlattens((x) => weightOfColdness(-x, limits), [-20, 20]);
  });
});

/** The balance of moments solved by hand: v2 = 2 m g (base / 2) / (1.2 area height). */
describe("toppling", () => {
  const stance = { massKg: 8, baseCm: 20, topCm: 28, heightCm: 26, canopyWidthCm: 40, plantHeightCm: 60 };
  it("tips where the moments balance", () => {
    const { sailM2, sailHeightM } = sailOf(stance);
    const windMoment = 0.5 * 1.2 * tippingGustMPerS(stance) ** 2 * sailM2 * sailHeightM;
    expect(windMoment).toBeCloseTo(8 * 9.81 * 0.1, 6);
  });

  it("a dry pot is lighter and tips sooner, a wider base later; a pot of that size in a near gale", () => {
    const gust = tippingGustMPerS(stance);
    expect(tippingGustMPerS({ ...stance, massKg: 6 })).toBeLessThan(gust);
    expect(tippingGustMPerS({ ...stance, baseCm: 26 })).toBeGreaterThan(gust);
    expect(gust).toBeGreaterThan(8);
    expect(gust).toBeLessThan(25);
  });

  it("is even at the tipping speed and next to nothing at two thirds of it", () => {
    expect(tippedShare(15, 15)).toBeCloseTo(0.5, 12);
    expect(harmOfGust(10, 15)).toBeLessThan(0.001);
    neverFalls((gust) => harmOfGust(gust, 15), [0, 50]);
  });
});
