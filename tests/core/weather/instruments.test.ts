import { describe, expect, test } from "vitest";
import { buildReading, buildReady, buildWeather, mean, PAST_DAYS } from "./build-weather.ts";

const nowHour = PAST_DAYS * 24 + 5;
const sum = (column: Float64Array, from: number, to: number) =>
  column.subarray(from, to).reduce((a, b) => a + b, 0);
const least = (column: Float64Array, from: number, to: number) =>
  column.subarray(from, to).reduce((a, b) => Math.min(a, b));

describe("the grower's gauge", () => {
  const showers = buildWeather({ rainMm: (hour) => (hour % 24 === 20 || hour % 24 === 21 ? 2 : 0) });

  test("makes the past add up to what was read, in the hours the model had wet", () => {
    const gauge = buildReading({ kind: "rain-gauge", rainMm: 14, hoursLong: 24 });
    const { past } = buildReady(showers, { journal: [gauge] });
    expect(sum(past.rainMm, nowHour - 24, nowHour)).toBeCloseTo(14, 9);
    expect(past.rainMm[nowHour - 9]).toBeCloseTo(7, 9);
    expect(sum(past.rainMm, 0, nowHour - 24)).toBeCloseTo(sum(showers.hours.rainMm, 0, nowHour - 24), 9);
  });

  test("nothing in it: it did not rain here", () => {
    const gauge = buildReading({ kind: "rain-gauge", rainMm: 0, hoursLong: 48 });
    const { past } = buildReady(showers, { journal: [gauge] });
    expect(sum(past.rainMm, nowHour - 48, nowHour)).toBe(0);
  });

  test("rain that the model had not goes where chance and cloud were greatest", () => {
    const chance = (hour: number) => (hour >= nowHour - 10 && hour < nowHour - 6 ? 0.4 : 0);
    const weather = buildWeather({ feedRainChanceFrac: chance });
    const gauge = buildReading({ kind: "rain-gauge", rainMm: 6, hoursLong: 24 });
    const { past } = buildReady(weather, { journal: [gauge] });
    expect(sum(past.rainMm, nowHour - 10, nowHour - 6)).toBeCloseTo(6, 9);
  });

  test("a longer reading leaves the hours of an earlier one alone", () => {
    const first = buildReading({ kind: "rain-gauge", rainMm: 5, hoursLong: 24, hoursAgo: 24 });
    const both = buildReading({ kind: "rain-gauge", rainMm: 8, hoursLong: 48 });
    const { past } = buildReady(showers, { journal: [both, first] });
    expect(sum(past.rainMm, nowHour - 48, nowHour - 24)).toBeCloseTo(5, 9);
    expect(sum(past.rainMm, nowHour - 24, nowHour)).toBeCloseTo(3, 9);
  });

  test("a reading that reaches back before the weather is left out", () => {
    const gauge = buildReading({ kind: "rain-gauge", rainMm: 50, hoursLong: 24 * 30 });
    expect(buildReady(showers, { journal: [gauge] }).past.rainMm).toEqual(buildReady(showers).past.rainMm);
  });

  test("tells nothing about what is coming", () => {
    const dry = buildReady(buildWeather()).ahead.tempC;
    const gauge = buildReading({ kind: "rain-gauge", rainMm: 9, hoursLong: 24 });
    expect(buildReady(buildWeather(), { journal: [gauge] }).ahead.tempC).toEqual(dry);
  });
});

describe("the grower's thermometer", () => {
  const cold = (hoursAgo: number, minC = 10) =>
    buildReading({ kind: "thermometer", minC, maxC: 29, hoursLong: 24, hoursAgo });

  test("moves the past night and day to what was read", () => {
    const { past } = buildReady(buildWeather(), { journal: [cold(0)] });
    expect(least(past.tempC, nowHour - 24, nowHour)).toBeCloseTo(10, 6);
    expect(past.tempC.subarray(nowHour - 24, nowHour).reduce((a, b) => Math.max(a, b))).toBeCloseTo(29, 6);
    for (let hour = 0; hour < nowHour; hour++)
      expect(past.dewPointC[hour]!).toBeLessThanOrEqual(past.tempC[hour]!);
  });

  const nightMean = (journal: Parameters<typeof buildReady>[1]) => {
    const { ahead } = buildReady(buildWeather(), journal);
    return mean(ahead.tempC.subarray(48 * 51, 49 * 51));
  };

  test("one cold night lowers the coming nights by less than a third of the difference", () => {
    const lowered = nightMean({}) - nightMean({ journal: [cold(0)] });
    expect(lowered).toBeGreaterThan(0.3);
    expect(lowered).toBeLessThan(1);
  });

  test("five of them lower it by more, and leave less doubt", () => {
    const one = nightMean({ journal: [cold(0)] });
    const five = nightMean({ journal: [0, 24, 48, 72, 96].map((hours) => cold(hours)) });
    expect(five).toBeLessThan(one);
    expect(five).toBeGreaterThan(nightMean({}) - 3);
  });

  test("warm nights raise it by half as much as cold ones lower it", () => {
    const nights = [0, 24, 48].map((hours) => cold(hours, 16));
    const coldNights = [0, 24, 48].map((hours) => cold(hours, 10));
    const raised = nightMean({ journal: nights }) - nightMean({});
    const lowered = nightMean({}) - nightMean({ journal: coldNights });
    expect(raised).toBeGreaterThan(0);
    expect(raised).toBeCloseTo(lowered / 2, 1);
  });

  test("afternoons ahead are hardly touched", () => {
    const at = (journal: Parameters<typeof buildReady>[1]) => {
      const { ahead } = buildReady(buildWeather(), journal);
      return mean(ahead.tempC.subarray(33 * 51, 34 * 51));
    };
    expect(Math.abs(at({ journal: [cold(0)] }) - at({}))).toBeLessThan(0.1);
  });

  test("a reading in the wrong scale, or one without a night, changes nothing", () => {
    const plain = buildReady(buildWeather());
    const fahrenheit = cold(0, 50);
    const noon = buildReading({ kind: "thermometer", minC: 15, hoursLong: 5, hoursAgo: 14 });
    for (const journal of [[fahrenheit], [noon]]) {
      const ready = buildReady(buildWeather(), { journal });
      expect(ready.past.tempC).toEqual(plain.past.tempC);
      expect(ready.ahead.tempC).toEqual(plain.ahead.tempC);
    }
  });
});
