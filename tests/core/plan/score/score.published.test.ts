import { describe, expect, it } from "vitest";
import { brierParts, type Told } from "../../../../core/plan/score/brier.ts";
import { crps } from "../../../../core/plan/score/crps.ts";
import { relativeValue, tableAbove } from "../../../../core/plan/score/relative-value.ts";
import { seededRandom } from "../../../../core/weather/seeded-random.ts";

/** Half of the last digit printed. */
const within = (printed: string) => 0.5 * 10 ** -(printed.split(".")[1]?.length ?? 0) + 1e-12;

/**
 * Finley's tornado forecasts of 1884 in the table by which they are always told: hits 28, false alarms 72, misses 23,
 * the rest 2680. Bureau of Meteorology, Australia, Finley tornado forecasts (verification pages). Read in source: the
 * table, and hit rate less false alarm rate 52 %, which is the greatest value.
 */
const FINLEY = { hits: 28, falseAlarms: 72, misses: 23, rightlyQuiet: 2680 };
const CAME_FRAC = 51 / 2803;

describe("value of Finley's forecasts", () => {
  it("is greatest where acting costs as much as it came, there hit rate less false alarm rate", () => {
    expect(Math.abs(100 * relativeValue(FINLEY, CAME_FRAC) - 52)).toBeLessThanOrEqual(within("52"));
    for (const costFrac of [0.009, 0.015, 0.02, 0.05, 0.1, 0.2]) {
      expect(relativeValue(FINLEY, costFrac)).toBeLessThan(relativeValue(FINLEY, CAME_FRAC));
    }
  });

  /** The range in which a table is worth asking, from its own counts: misses over quiet days, hits over alarms. [RICHARDSON2000] */
  it("is above nothing just between missed over quiet and hits over alarms", () => {
    const [from, to] = [23 / (23 + 2680), 28 / (28 + 72)];
    expect(relativeValue(FINLEY, from)).toBeCloseTo(0, 12);
    expect(relativeValue(FINLEY, to)).toBeCloseTo(0, 12);
    expect(relativeValue(FINLEY, from * 0.9)).toBeLessThan(0);
    expect(relativeValue(FINLEY, to * 1.1)).toBeLessThan(0);
    expect(relativeValue(FINLEY, 0.1)).toBeGreaterThan(0);
  });

  it("is one for perfect foresight and nothing for a table without skill", () => {
    expect(relativeValue({ hits: 51, falseAlarms: 0, misses: 0, rightlyQuiet: 2752 }, 0.1)).toBeCloseTo(
      1,
      12,
    );
    expect(relativeValue({ hits: 0, falseAlarms: 0, misses: 51, rightlyQuiet: 2752 }, 0.1)).toBeCloseTo(
      0,
      12,
    );
  });
});

describe("Murphy's property [MURPHY1977, abstract read]", () => {
  /** Shares that come true as often as they say: no cost makes acting on them dearer than always or never acting. */
  it("reliable shares are worth asking at every cost", () => {
    const reliable: Told[] = [0, 0.1, 0.3, 0.5, 0.8, 1].flatMap((toldFrac) =>
      Array.from({ length: 100 }, (_, i) => ({ toldFrac, cameTrue: i < Math.round(100 * toldFrac) })),
    );
    let best = 0;
    for (let costFrac = 0.01; costFrac < 1; costFrac += 0.01) {
      const value = relativeValue(tableAbove(reliable, costFrac), costFrac);
      expect(value).toBeGreaterThanOrEqual(-1e-12);
      best = Math.max(best, value);
    }
    expect(best).toBeGreaterThan(0.5);
  });

  it("shares that are too sure are worse than not asking at some cost", () => {
    const tooSure: Told[] = Array.from({ length: 100 }, (_, i) => ({
      toldFrac: i < 50 ? 1 : 0,
      cameTrue: i < 50 ? i < 30 : i < 70,
    }));
    const values = [0.1, 0.2, 0.3, 0.5, 0.7, 0.9].map((costFrac) =>
      relativeValue(tableAbove(tooSure, costFrac), costFrac),
    );
    expect(Math.min(...values)).toBeLessThan(0);
  });
});

describe("Brier score [BRIER1950]", () => {
  it("of 0.271 told for what did not come is 0.073441 (test data of an open verification library; read in source)", () => {
    expect(brierParts([{ toldFrac: 0.271, cameTrue: false }])!.score).toBeCloseTo(0.073441, 12);
  });

  it("is the sum of its parts, whatever was told", () => {
    const { uniform } = seededRandom(4);
    const told = Array.from({ length: 300 }, () => {
      const toldFrac = Math.round(10 * uniform()) / 10;
      return { toldFrac, cameTrue: uniform() < 0.2 + 0.5 * toldFrac };
    });
    const { score, reliability, resolution, uncertainty } = brierParts(told)!;
    expect(score).toBeCloseTo(reliability - resolution + uncertainty, 12);
    expect(Math.min(reliability, resolution, uncertainty)).toBeGreaterThan(0);
  });

  it("has no reliability part left when tellings come true as often as they say", () => {
    const told = [0.2, 0.8].flatMap((toldFrac) =>
      Array.from({ length: 10 }, (_, i) => ({ toldFrac, cameTrue: i < 10 * toldFrac })),
    );
    const { reliability, uncertainty } = brierParts(told)!;
    expect(reliability).toBeCloseTo(0, 12);
    expect(uncertainty).toBe(0.25);
  });
});

/** Test data of two open-source score libraries (ensemble form; read in source); the fifth as printed to four digits. */
const CRPS_CASES = [
  { values: [0, 1], came: 0, printed: "0.25" },
  { values: [0, 1], came: 2, printed: "1.25" },
  { values: [-1, 1], came: 0, printed: "0.5" },
  { values: [0, 4, 3, 7], came: 2, printed: "1.125" },
  { values: [0, 1, 4], came: 1, printed: "0.4444" },
  { values: [1, -1, 2, 4], came: 3, printed: "1.0" },
  { values: [-1, 0, 0, 1], came: 0, printed: "0.125" },
] as const;

describe("continuous ranked probability score [HERSBACH2000]", () => {
  it("has seven cases", () => expect(CRPS_CASES).toHaveLength(7));

  it.each(CRPS_CASES)("$values against $came is $printed", ({ values, came, printed }) => {
    expect(Math.abs(crps({ values }, came) - Number(printed))).toBeLessThanOrEqual(within(printed));
  });

  it("takes weights as so many equal values", () => {
    const weighted = crps({ values: [0, 1], weightFrac: [2 / 3, 1 / 3] }, 1);
    expect(weighted).toBeCloseTo(4 / 9, 12);
  });
});
