import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  extraterrestrialDayMjPerM2,
  extraterrestrialHourMjPerM2,
} from "../../../core/weather/extraterrestrial.ts";
import { bridgeShortGaps } from "../../../core/weather/ladder/bridge.ts";
import { daylightHours } from "../../../core/weather/sun-geometry.ts";
import { type Et0DailyInput, et0DailyWork } from "../../../core/weather/work/et0-daily-work.ts";
import { et0HourlyWork } from "../../../core/weather/work/et0-hourly-work.ts";
import { et0TemperatureWork } from "../../../core/weather/work/et0-temperature-work.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const dayOfYear = fc.integer({ min: 1, max: 366 });
const latDeg = between(-90, 90);

/**
 * A day of the growing season, sun between dense cloud and clear sky. Under a low winter sun a clearer sky loses about
 * as much longwave as it gains: there the equation itself does not rise with the sun, so those days are not asked.
 */
const growingDay = fc
  .record({
    latDeg: between(-50, 50),
    elevationM: between(0, 2500),
    dayOfYear,
    tempMinC: between(5, 22),
    rangeC: between(4, 18),
    drynessC: between(1, 12),
    // Below some 1.2 m/s under a clear sky drier air lowers ET0: it lets more longwave out than still air can make good by drying.
    windMPerS: between(1.5, 5),
    clearFrac: between(0.3, 0.95),
  })
  .map(({ rangeC, drynessC, clearFrac, ...rest }) => {
    const day = {
      ...rest,
      tempMaxC: rest.tempMinC + rangeC,
      windHeightM: 2,
      dewPointC: rest.tempMinC - drynessC,
    };
    const sky = et0DailyWork({ ...day, radiationMjPerM2: 0 }).clearSkyMjPerM2;
    return { ...day, radiationMjPerM2: clearFrac * sky, skyMjPerM2: sky };
  })
  .filter((day) => day.skyMjPerM2 >= 18);
const et0 = (day: Et0DailyInput) => et0DailyWork(day).et0Mm;

describe("a day", () => {
  test("more sun or drier air never lowers it", () => {
    fc.assert(
      fc.property(growingDay, (day) => {
        const plain = et0(day);
        const sunnier = { ...day, radiationMjPerM2: day.radiationMjPerM2 + 0.05 * day.skyMjPerM2 };
        expect(et0(sunnier)).toBeGreaterThanOrEqual(plain);
        expect(et0({ ...day, dewPointC: day.dewPointC - 2 })).toBeGreaterThanOrEqual(plain);
      }),
      { numRuns: 500, seed: 1 },
    );
  });

  test("more wind never lowers it where the air draws more than the sun gives", () => {
    fc.assert(
      fc.property(growingDay, (day) => {
        // Wind raises ET0 as long as the air's part alone would exceed what stands: in dry air always.
        const dry = { ...day, dewPointC: day.tempMinC - 15, radiationMjPerM2: 0.5 * day.skyMjPerM2 };
        expect(et0({ ...dry, windMPerS: day.windMPerS + 1 })).toBeGreaterThanOrEqual(et0(dry) - 1e-12);
      }),
      { numRuns: 500, seed: 2 },
    );
  });

  test("every latitude and day of a leap year gives a number", () => {
    fc.assert(
      fc.property(latDeg, dayOfYear, between(-40, 45), (lat, day, tempMinC) => {
        const place = { latDeg: lat, dayOfYear: day, tempMinC, tempMaxC: tempMinC + 5 };
        const work = et0DailyWork({
          ...place,
          elevationM: 0,
          windMPerS: 2,
          windHeightM: 10,
          radiationMjPerM2: 0,
          rhMeanFrac: 0.6,
        });
        expect(Number.isFinite(work.et0Mm)).toBe(true);
        expect(Number.isFinite(et0TemperatureWork(place).et0Mm)).toBe(true);
        for (const step of work.steps) expect(Number.isFinite(step.value), step.name).toBe(true);
      }),
      { numRuns: 1000, seed: 3 },
    );
  });
});

describe("the sun above the air", () => {
  test("is never negative, and the hours of a day add up to the day", () => {
    fc.assert(
      fc.property(latDeg, between(-180, 180), dayOfYear, (lat, lonDeg, day) => {
        const whole = extraterrestrialDayMjPerM2({ latDeg: lat, dayOfYear: day });
        expect(whole).toBeGreaterThanOrEqual(0);
        let sum = 0;
        for (let hourStartUtc = 0; hourStartUtc < 24; hourStartUtc++) {
          const hour = extraterrestrialHourMjPerM2({ latDeg: lat, lonDeg, dayOfYear: day, hourStartUtc });
          expect(hour).toBeGreaterThanOrEqual(0);
          expect(hour).toBeLessThan(5.1);
          sum += hour;
        }
        expect(sum).toBeCloseTo(whole, 6);
      }),
      { numRuns: 1000, seed: 4 },
    );
  });

  test("polar night is dark, polar day has 24 hours, the poles are finite", () => {
    for (const pole of [90, -90]) {
      for (let day = 1; day <= 366; day++) {
        expect(Number.isFinite(extraterrestrialDayMjPerM2({ latDeg: pole, dayOfYear: day }))).toBe(true);
      }
    }
    expect(extraterrestrialDayMjPerM2({ latDeg: 80, dayOfYear: 355 })).toBe(0);
    expect(daylightHours({ latDeg: 80, dayOfYear: 172 })).toBe(24);
    expect(daylightHours({ latDeg: -80, dayOfYear: 172 })).toBe(0);
    expect(extraterrestrialDayMjPerM2({ latDeg: 90, dayOfYear: 172 })).toBeGreaterThan(40);
  });

  test("the hemispheres mirror each other half a year apart", () => {
    for (const lat of [10, 35, 60]) {
      const north = daylightHours({ latDeg: lat, dayOfYear: 172 });
      const south = daylightHours({ latDeg: -lat, dayOfYear: 172 });
      expect(north + south).toBeCloseTo(24, 9);
      expect(north).toBeGreaterThan(12);
    }
  });
});

describe("an hour", () => {
  test("gives a number anywhere, any time, with either standard", () => {
    fc.assert(
      fc.property(latDeg, between(-180, 180), dayOfYear, between(0, 24), (lat, lonDeg, day, hourStartUtc) => {
        for (const coefficients of ["fao56", "asce-short"] as const) {
          const work = et0HourlyWork({
            latDeg: lat,
            lonDeg,
            elevationM: 100,
            dayOfYear: day,
            hourStartUtc,
            tempC: 15,
            dewPointC: 8,
            windMPerS: 2,
            windHeightM: 10,
            radiationMjPerM2: 0.5,
            coefficients,
          });
          for (const step of work.steps) expect(Number.isFinite(step.value), step.name).toBe(true);
        }
      }),
      { numRuns: 500, seed: 5 },
    );
  });

  test("values that cannot be true are refused by name", () => {
    const hour = {
      latDeg: 40,
      lonDeg: 0,
      elevationM: 0,
      dayOfYear: 100,
      hourStartUtc: 12,
      tempC: 20,
      dewPointC: 10,
      windMPerS: 2,
      windHeightM: 10,
      radiationMjPerM2: 2,
      coefficients: "fao56" as const,
    };
    expect(() => et0HourlyWork({ ...hour, latDeg: 91 })).toThrow(/latDeg is 91/);
    expect(() => et0HourlyWork({ ...hour, tempC: Number.NaN })).toThrow(/tempC is NaN/);
    expect(() => et0TemperatureWork({ latDeg: 0, dayOfYear: 1, tempMinC: 9, tempMaxC: 8 })).toThrow(/above/);
  });
});

test("a column with a hole longer than the bridge stays unknown there and nowhere else", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 8 }), (from, length) => {
      const column = Float64Array.from({ length: 40 }, (_, i) =>
        i >= from && i < from + length ? Number.NaN : i,
      );
      const bridged = bridgeShortGaps(column, 3);
      bridged.forEach((value, i) => {
        const inHole = i >= from && i < from + length;
        if (inHole && length > 3) expect(value).toBeNaN();
        else expect(value).toBeCloseTo(i, 9);
      });
    }),
    { seed: 6 },
  );
});
