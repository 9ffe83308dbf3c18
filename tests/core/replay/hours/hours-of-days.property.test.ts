import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { DailyWeather } from "../../../../core/replay/hours/daily-weather.ts";
import { dayAxis } from "../../../../core/replay/hours/day-axis.ts";
import {
  MONSOON_CLIMATE,
  NEW_YORK_CLIMATE,
  SEATTLE_CLIMATE,
} from "../../../../core/replay/hours/day-climates.ts";
import { hoursOfDays } from "../../../../core/replay/hours/hours-of-days.ts";
import type { CalendarDay } from "../../../../core/site/site.ts";
import { SITE } from "./some-days.ts";

const day = fc.record({
  rainMm: fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 150, noNaN: true })),
  tempMinC: fc.double({ min: -25, max: 28, noNaN: true }),
  rangeC: fc.double({ min: 0, max: 20, noNaN: true }),
  windMPerS: fc.double({ min: 0.2, max: 16, noNaN: true }),
});

const weeks = fc
  .record({
    days: fc.array(day, { minLength: 2, maxLength: 9 }),
    // Both clock changes, a leap day, the turn of a year.
    firstDay: fc.constantFrom("2013-03-08", "2013-10-30", "2012-02-27", "2014-12-29", "2015-06-18"),
    zone: fc.constantFrom("America/Los_Angeles", "Europe/Berlin", "Asia/Kolkata", "UTC"),
    climate: fc.constantFrom(SEATTLE_CLIMATE, NEW_YORK_CLIMATE, MONSOON_CLIMATE),
    seed: fc.integer({ min: 0, max: 1e6 }),
  })
  .map(({ days, firstDay, zone, climate, seed }) => ({
    seed,
    daily: {
      site: { ...SITE, zone },
      climate,
      firstDay: firstDay as CalendarDay,
      rainMm: Float64Array.from(days, (one) => one.rainMm),
      tempMinC: Float64Array.from(days, (one) => one.tempMinC),
      tempMaxC: Float64Array.from(days, (one) => one.tempMinC + one.rangeC),
      windMPerS: Float64Array.from(days, (one) => one.windMPerS),
    } satisfies DailyWeather,
  }));

describe("days cut into hours", () => {
  it("keep each day's rain, extremes and mean wind", () => {
    fc.assert(
      fc.property(weeks, ({ daily, seed }) => {
        const hours = hoursOfDays(daily, seed);
        const { days } = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);
        expect(days).toHaveLength(daily.rainMm.length);
        for (const [d, { fromHour, toHour }] of days.entries()) {
          const of = (column: Float64Array) => column.subarray(fromHour, toHour);
          expect(sum(of(hours.rainMm))).toBeCloseTo(daily.rainMm[d]!, 9);
          expect(Math.min(...of(hours.tempC))).toBe(daily.tempMinC[d]!);
          expect(Math.max(...of(hours.tempC))).toBe(daily.tempMaxC[d]!);
          expect(sum(of(hours.windMPerS)) / (toHour - fromHour)).toBeCloseTo(daily.windMPerS[d]!, 9);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("hold nothing that cannot be: rain below zero, dew above the air, sun above a clear sky or by night", () => {
    fc.assert(
      fc.property(weeks, ({ daily, seed }) => {
        const hours = hoursOfDays(daily, seed);
        for (let hour = 0; hour < hours.hourCount; hour++) {
          expect(hours.rainMm[hour]).toBeGreaterThanOrEqual(0);
          expect(hours.dewPointC[hour]).toBeLessThanOrEqual(hours.tempC[hour]!);
          expect(hours.gustMPerS[hour]).toBeGreaterThan(hours.windMPerS[hour]!);
          expect(hours.cloudFrac[hour]).toBeGreaterThanOrEqual(0);
          expect(hours.cloudFrac[hour]).toBeLessThanOrEqual(1);
          expect(hours.radiationMjPerM2[hour]).toBeGreaterThanOrEqual(0);
          // The solar constant over an hour is 4.92 MJ/m2; a clear sky lets some three quarters through.
          expect(hours.radiationMjPerM2[hour]).toBeLessThan(4);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("come out the same for the same seed", () => {
    fc.assert(
      fc.property(weeks, ({ daily, seed }) => {
        expect(hoursOfDays(daily, seed)).toEqual(hoursOfDays(daily, seed));
      }),
      { numRuns: 10 },
    );
  });
});

function sum(column: Float64Array): number {
  return column.reduce((total, value) => total + value, 0);
}
