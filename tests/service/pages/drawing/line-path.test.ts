import { expect, it } from "vitest";
import { linePath } from "../../../../service/pages/drawing/line-path.ts";

it("leads step by step to each place, across to the pixel and down to a tenth of it", () => {
  // By the commands of a path in SVG 2, 9.3: small letters step from where the pen is.
  expect(
    linePath([
      [
        [10, 20.04],
        [30.4, 20.04],
      ],
      [
        [10.6, 19.5],
        [10.6, 4],
        [0, 0],
      ],
    ]),
  ).toBe("m10 20h20m-19-.5v-15.5l-11-4");
});

it("does not drift over a hundred steps that are all rounded down", () => {
  const lines = Array.from({ length: 100 }, (_, index) => [[0.4 * index, 0.04 * index] as const]);
  const steps = [...linePath(lines).matchAll(/m(-?[\d.]+)[ ]?(-?[\d.]+)/g)];
  const sum = (at: 1 | 2) => steps.reduce((total, step) => total + Number(step[at]), 0);
  expect(steps).toHaveLength(100);
  expect(Math.abs(sum(1) - 0.4 * 99)).toBeLessThanOrEqual(0.5);
  expect(Math.abs(sum(2) - 0.04 * 99)).toBeLessThanOrEqual(0.05 + 1e-9);
});
