import { expect, test } from "vitest";
import { seededRandom, seedFrom } from "../../../core/weather/seeded-random.ts";
import { mean, standardDeviation } from "./build-weather.ts";

const draw = (seed: number, count: number) => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, () => random.uniform());
};

test("the same seed gives the same stream, another seed another", () => {
  expect(draw(5, 20)).toEqual(draw(5, 20));
  expect(draw(6, 20)).not.toEqual(draw(5, 20));
});

test("uniforms fill 0 to 1 evenly", () => {
  const values = draw(1, 20_000);
  expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
  for (let tenth = 0; tenth < 10; tenth++) {
    const share = values.filter((value) => Math.floor(value * 10) === tenth).length / values.length;
    // Five standard deviations of a count of 20 000 with a chance of 0.1.
    expect(Math.abs(share - 0.1)).toBeLessThan(0.011);
  }
});

test("normals have mean 0, deviation 1, and the tails of the table", () => {
  const random = seededRandom(2);
  const values = Array.from({ length: 20_000 }, () => random.normal());
  expect(Math.abs(mean(values))).toBeLessThan(0.035);
  expect(Math.abs(standardDeviation(values) - 1)).toBeLessThan(0.025);
  const beyond = values.filter((value) => Math.abs(value) > 1.96).length / values.length;
  expect(Math.abs(beyond - 0.05)).toBeLessThan(0.008);
});

test("seeds of neighbours share nothing", () => {
  const first = [1, 2, 3, 4, 5, 6, 7, 8].map((day) => seededRandom(seedFrom([1, day])).uniform());
  expect(new Set(first).size).toBe(8);
  expect(standardDeviation(first)).toBeGreaterThan(0.1);
  expect(seedFrom([1, 2])).not.toBe(seedFrom([2, 1]));
});

test("a seed that is no number is refused", () => {
  expect(() => seededRandom(Number.NaN)).toThrow(RangeError);
});
