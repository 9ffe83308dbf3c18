import { describe, expect, test } from "vitest";
import { et0DailyWork } from "../../../core/weather/work/et0-daily-work.ts";
import { et0HourlyWork } from "../../../core/weather/work/et0-hourly-work.ts";
import { heatIndexWork } from "../../../core/weather/work/heat-index-work.ts";
import type { WorkStep } from "../../../core/weather/work/work-step.ts";

// The equator at the equinox, where the sun's height is a right angle less the hour angle to 0.002 rad.
const HOUR = {
  latDeg: 0,
  lonDeg: 0,
  elevationM: 0,
  dayOfYear: 81,
  hourStartUtc: 12,
  tempC: 20,
  dewPointC: 12,
  windMPerS: 2,
  windHeightM: 2,
  radiationMjPerM2: 0.45,
  coefficients: "fao56",
} as const;

const DAY = {
  latDeg: 50.8,
  elevationM: 100,
  dayOfYear: 187,
  tempMinC: 18,
  tempMaxC: 25,
  windMPerS: 2,
  windHeightM: 2,
  radiationMjPerM2: 22,
} as const;

function stepValue(work: { steps: readonly WorkStep[] }, name: string): number {
  const found = work.steps.find((step) => step.name === name);
  if (!found) throw new Error(`no step ${name}`);
  return found.value;
}

const lossAt = (cloudRatioFrac: number) =>
  stepValue(et0HourlyWork({ ...HOUR, cloudRatioFrac }), "netLongwaveMjPerM2");

/** UTC at which the hour begins whose middle has the sun at a height; the clock is 0.1255 h ahead. [FAO56 eq. 31, 32] */
const hourWithSunAt = (heightRad: number) => 12 - (12 / Math.PI) * (Math.PI / 2 - heightRad) - 0.5 + 0.1255;

describe("how cloud enters the longwave", () => {
  test("the cloud term 1.35 Rs/Rso - 0.35 runs from 0.055 at 0.3 to 1 at 1, and no further [FAO56 eq. 39, ASCE2005]", () => {
    expect(lossAt(0.3) / lossAt(1)).toBeCloseTo(0.055, 9);
    expect(lossAt(0.31) / lossAt(1)).toBeCloseTo(0.0685, 9);
    expect(lossAt(0)).toBe(lossAt(0.3));
    expect(lossAt(2)).toBe(lossAt(1));
    expect(lossAt(0.99)).toBeLessThan(lossAt(1));
  });

  test("an hour's own ratio counts from 0.3 rad of sun, below it the default [ASCE2005]", () => {
    const ratioAt = (heightRad: number) => {
      const work = et0HourlyWork({ ...HOUR, hourStartUtc: hourWithSunAt(heightRad) });
      return {
        used: stepValue(work, "cloudRatioFrac"),
        own: HOUR.radiationMjPerM2 / stepValue(work, "clearSkyMjPerM2"),
      };
    };
    const high = ratioAt(0.32);
    expect(high.used).toBeCloseTo(high.own, 9);
    const low = ratioAt(0.28);
    expect(low.used).toBe(0.5);
    expect(low.own).toBeLessThan(0.49);
  });

  test("without a ratio by night: middle of 0.4 to 0.6 in damp air, of 0.7 to 0.8 in dry air [FAO56 ch. 4]", () => {
    const byNight = { ...HOUR, hourStartUtc: 0, radiationMjPerM2: 0 };
    expect(stepValue(et0HourlyWork(byNight), "cloudRatioFrac")).toBe(0.5);
    expect(stepValue(et0HourlyWork({ ...byNight, dewPointC: 2 }), "cloudRatioFrac")).toBe(0.75);
  });

  test("a short winter day still has a ratio of its own", () => {
    const work = et0DailyWork({ ...DAY, latDeg: 60, dayOfYear: 355, radiationMjPerM2: 0.8, rhMeanFrac: 0.8 });
    expect(stepValue(work, "clearSkyMjPerM2")).toBeLessThan(2);
    expect(stepValue(work, "cloudRatioFrac")).toBeCloseTo(0.8 / stepValue(work, "clearSkyMjPerM2"), 9);
  });
});

test("the highest humidity alone belongs to the coldest hour [FAO56 eq. 18 with e0(18) = 2.064 of example 5]", () => {
  const { actualVapourPressureKPa } = et0DailyWork({ ...DAY, rhMaxFrac: 0.82 });
  expect(Math.abs(actualVapourPressureKPa - 0.82 * 2.064)).toBeLessThan(0.82 * 0.0005);
});

describe("heat index beyond the chart [NWS2014]", () => {
  const celsius = (tempF: number) => (tempF - 32) / 1.8;

  test("dry heat takes off 0.75 °F at 95 °F and 10 %, 2.5 °F at 3 %, nothing at 13 %", () => {
    const taken = [0.1, 0.03, 0.13].map((rhFrac) =>
      stepValue(heatIndexWork({ tempC: celsius(95), rhFrac }), "adjustmentF"),
    );
    expect(taken[0]).toBeCloseTo(-0.75, 9);
    expect(taken[1]).toBeCloseTo(-2.5, 9);
    expect(taken[2]).toBeCloseTo(0, 9);
  });

  test("the regression begins where the simple form, averaged with the temperature, reaches 80 °F", () => {
    // By the formula: 80 °F and 40 % give 79.79, 81 °F and 40 % give 80.84.
    const names = (tempF: number) =>
      heatIndexWork({ tempC: celsius(tempF), rhFrac: 0.4 }).steps.map(({ name }) => name);
    expect(names(80)).not.toContain("regressionF");
    expect(names(81)).toContain("regressionF");
  });
});
