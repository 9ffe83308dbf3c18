import { describe, expect, it } from "vitest";
import { forecaster } from "../../../../core/replay/forecast/forecaster.ts";
import { drawPlaceBias, NO_BIAS } from "../../../../core/replay/forecast/place-bias.ts";
import { dayAxis } from "../../../../core/replay/hours/day-axis.ts";
import { hoursOfDays } from "../../../../core/replay/hours/hours-of-days.ts";
import { weatherReady } from "../../../../core/weather/ready.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { someDays } from "../hours/some-days.ts";
import { mean, rms } from "./issues.ts";

const DAYS = someDays(60, { rainMm: Float64Array.from({ length: 60 }, (_, d) => (d % 3 === 0 ? 7 : 0)) });
const AXIS = dayAxis(DAYS.site, DAYS.firstDay, 60);
const HOURS = hoursOfDays(DAYS, 1);

function morning(issueDay: number, change: { seed?: number; memberCount?: number; unbiased?: boolean } = {}) {
  const { seed = 1, memberCount = 5, unbiased = true } = change;
  const bias = unbiased ? { bias: NO_BIAS } : {};
  const issueUtcMs = AXIS.startUtcMs + (AXIS.days[issueDay]!.fromHour + 7) * HOUR_MS;
  const weather = forecaster({ daily: DAYS, hours: HOURS, seed, memberCount, ...bias }).weatherAt({
    issueDay,
    issueUtcMs,
    pastDays: 10,
    aheadDays: 7,
  });
  return { weather, issueUtcMs };
}

describe("a replayed forecast", () => {
  it("is the same for the same seed and another for another", () => {
    expect(morning(20)).toEqual(morning(20));
    expect(morning(20, { seed: 2 }).weather.hours.tempC).not.toEqual(morning(20).weather.hours.tempC);
  });

  it("holds the past and the days ahead on one axis, members from the day of issue on", () => {
    const { weather } = morning(20);
    expect(weather.hourCount).toBe(18 * 24);
    expect(weather.hours.rainMm.every(Number.isFinite)).toBe(true);
    const { members } = weather;
    expect(members!.tempC.subarray(0, 10 * 24 * 5).every(Number.isNaN)).toBe(true);
    expect(members!.tempC.subarray(10 * 24 * 5).every(Number.isFinite)).toBe(true);
    expect(morning(20, { memberCount: 0 }).weather.members).toBeNull();
  });

  it("is fit for the planner: nothing stands in but what no station tells", () => {
    const { weather, issueUtcMs } = morning(20);
    const ready = weatherReady({
      weather,
      site: DAYS.site,
      journal: [],
      nowUtcMs: issueUtcMs,
      cloudSize: 11,
      horizonHours: 168,
      seed: 1,
    });
    expect(ready.trust).toBe("full");
    expect(ready.realMemberCount).toBe(5);
    expect(ready.standIns).toEqual([]);
  });

  it("tells a past that is not the truth, but the nearest run's", () => {
    const { weather } = morning(20);
    const past = weather.hours.tempC.subarray(0, 240);
    const truth = HOURS.tempC.subarray(10 * 24, 20 * 24);
    const errors = Array.from(past, (tempC, i) => tempC - truth[i]!);
    expect(rms(errors)).toBeGreaterThan(0.4);
    expect(rms(errors)).toBeLessThan(2);
    expect(morning(21).weather.hours.tempC.subarray(0, 9 * 24)).toEqual(past.subarray(24));
  });

  it("has dew below the air, no rain below zero and no night sun", () => {
    const { hours } = morning(20).weather;
    for (let i = 0; i < hours.tempC.length; i++) {
      expect(hours.dewPointC[i]).toBeLessThanOrEqual(hours.tempC[i]!);
      expect(hours.rainMm[i]).toBeGreaterThanOrEqual(0);
    }
    const night = hours.radiationMjPerM2.filter((_, i) => i % 24 < 4);
    expect(Math.max(...night)).toBe(0);
  });

  it("is off by a steady bias of its place", () => {
    const means = [1, 2, 3, 4, 5, 6].map((seed) => {
      const told = morning(20, { seed, unbiased: false }).weather.hours.tempC;
      return mean(Array.from(told)) - mean(Array.from(morning(20, { seed }).weather.hours.tempC));
    });
    const drawn = [1, 2, 3, 4, 5, 6].map((seed) => drawPlaceBias(seed));
    for (const [i, { tempMinC, tempMaxC }] of drawn.entries()) {
      expect(means[i]).toBeGreaterThan(Math.min(tempMinC, tempMaxC) - 0.01);
      expect(means[i]).toBeLessThan(Math.max(tempMinC, tempMaxC) + 0.01);
    }
  });
});
