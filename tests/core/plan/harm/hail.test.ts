import { describe, expect, it } from "vitest";
import { harmOfHailDay, isHail } from "../../../../core/plan/harm/hail.ts";

describe("hail", () => {
  /** WMO code table 4677, from memory: 27 and 89, 90 hail in showers, 96 and 99 thunderstorm with hail. */
  it("is told from thunder without it and from soft hail", () => {
    const hail = Array.from({ length: 100 }, (_, code) => code).filter(isHail);
    expect(hail).toEqual([27, 89, 90, 96, 99]);
  });

  it("harms as far as rain reaches: nothing under a roof, little enough in the open to be no loss", () => {
    expect(harmOfHailDay(0)).toBe(0);
    expect(harmOfHailDay(0.5)).toBeCloseTo(harmOfHailDay(1) / 2, 12);
    expect(harmOfHailDay(1)).toBeGreaterThan(0);
    expect(harmOfHailDay(1)).toBeLessThan(0.02);
  });
});
