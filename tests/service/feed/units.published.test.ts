import { describe, expect, it } from "vitest";
import { possible, type Quantity, toOurUnit } from "../../../service/feed/open-meteo/quantity.ts";

interface UnitCase {
  readonly quantity: Quantity;
  readonly unit: string;
  readonly one: number;
  readonly printed: string;
}

/**
 * Conversion factors as printed in Thompson, A.; Taylor, B. N.: Guide for the use of the International System of Units,
 * NIST Special Publication 811, 2008, appendix B.8. Status: from-memory. Tolerance: half the last printed digit;
 * exact ones, which the guide prints in bold, to rounding.
 */
const SP811: readonly UnitCase[] = [
  { quantity: "rainMm", unit: "inch", one: 1, printed: "25.4" },
  { quantity: "et0Mm", unit: "inch", one: 1, printed: "25.4" },
  { quantity: "windMPerS", unit: "km/h", one: 1, printed: "0.2777778" },
  { quantity: "windMPerS", unit: "mp/h", one: 1, printed: "0.44704" },
  { quantity: "windMPerS", unit: "kn", one: 1, printed: "0.5144444" },
  { quantity: "tempC", unit: "°F", one: 212, printed: "100" },
  { quantity: "tempC", unit: "°F", one: 32, printed: "0" },
  { quantity: "tempC", unit: "°F", one: -40, printed: "-40" },
];

describe("units of the feed against NIST SP 811", () => {
  it("has all its cases", () => expect(SP811.length).toBe(8));

  it.each(SP811)("$one $unit is $printed in ours ($quantity)", ({ quantity, unit, one, printed }) => {
    const decimals = printed.split(".")[1]?.length ?? 0;
    const seen = toOurUnit(quantity, unit)!(one);
    expect(Math.abs(seen - Number(printed))).toBeLessThanOrEqual(0.5 * 10 ** -Math.max(decimals, 7));
  });
});

/** What has been measured must be possible: records of the WMO archive of weather and climate extremes. From memory. */
const RECORDS: readonly { quantity: Quantity; value: number; what: string }[] = [
  { quantity: "tempC", value: -89.2, what: "coldest air, Vostok 1983" },
  { quantity: "tempC", value: 56.7, what: "hottest air, Furnace Creek 1913" },
  { quantity: "windMPerS", value: 113.2, what: "strongest gust, Barrow Island 1996" },
  { quantity: "rainMm", value: 305, what: "rain in 42 minutes, Holt 1947" },
];

describe("limits against world records", () => {
  it("has all its cases", () => expect(RECORDS.length).toBe(4));

  it.each(RECORDS)("$what is possible", ({ quantity, value }) => {
    expect(possible(quantity, value)).toBe(value);
  });

  it("takes a little below zero as zero and a lot as unknown", () => {
    expect(possible("rainMm", -0.001)).toBe(0);
    expect(possible("rainMm", -3)).toBeNaN();
    expect(possible("radiationMjPerM2", -0.0004)).toBe(0);
  });

  it("does not know a unit that is not documented, nor a property of every object", () => {
    expect(toOurUnit("tempC", "K")).toBeNull();
    expect(toOurUnit("tempC", "toString")).toBeNull();
  });
});
