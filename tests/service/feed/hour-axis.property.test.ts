import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { hourAxis, onAxis } from "../../../service/feed/hour-axis.ts";
import { largerOfEnds, meanOfEnds, stampedAtEnd } from "../../../service/feed/hours-from-stamps.ts";

/** Rows in any order, some twice, some missing; the value of a row is its hour. */
const rows = fc
  .array(fc.integer({ min: 0, max: 400 }), { minLength: 2, maxLength: 300 })
  .filter((hours) => new Set(hours).size > 1);

describe("any rows of whole hours come onto one unbroken axis", () => {
  it("each stamp holds its own value or is unknown", () => {
    fc.assert(
      fc.property(rows, fc.integer({ min: -100_000, max: 600_000 }), (hours, offset) => {
        const axis = hourAxis(Float64Array.from(hours, (hour) => (offset + hour) * HOUR_MS))!;
        const first = Math.min(...hours);
        expect(axis.firstUtcMs).toBe((offset + first) * HOUR_MS);
        expect(axis.stampCount).toBe(Math.max(...hours) - first + 1);
        const byStamp = onAxis(axis, Float64Array.from(hours));
        const told = new Set(hours);
        byStamp.forEach((value, stamp) => {
          expect(value).toBe(told.has(first + stamp) ? first + stamp : Number.NaN);
        });
        expect(axis.missing).toBe(byStamp.filter(Number.isNaN).length);
        expect(axis.twice).toBe(hours.length - told.size);
      }),
    );
  });

  it("a stamp off the hour, one stamp alone or a span of years is no axis", () => {
    expect(hourAxis(Float64Array.of(0, HOUR_MS + 1))).toBeNull();
    expect(hourAxis(Float64Array.of(0, Number.NaN))).toBeNull();
    expect(hourAxis(Float64Array.of(HOUR_MS))).toBeNull();
    expect(hourAxis(Float64Array.of(0, 0))).toBeNull();
    expect(hourAxis(Float64Array.of(0, 20_000 * HOUR_MS))).toBeNull();
  });
});

describe("n stamps bound n - 1 hours", () => {
  const stamps = Float64Array.of(1, 3, Number.NaN, 5);

  it("instants are averaged and unknown beside an unknown end", () => {
    expect([...meanOfEnds(stamps)]).toEqual([2, Number.NaN, Number.NaN]);
  });

  it("codes take the larger end that is known", () => {
    expect([...largerOfEnds(stamps)]).toEqual([3, 3, 5]);
  });

  it("totals belong to the hour that their stamp ends", () => {
    expect([...stampedAtEnd(stamps)]).toEqual([3, Number.NaN, 5]);
  });
});
