import { describe, expect, test } from "vitest";
import { sunHours } from "../../../core/site/sun-hours.ts";
import { SITE } from "../weather/build-weather.ts";

// Allen et al. (1998), FAO-56 example 19, read in source: N'Diaye, 16°13' N, 16°15' W, 1 October. In the hour from 15 UTC
// the sun's angle at the middle is 0.682 rad, the declination -0.0753; Ra 3.543 and Rso 2.658 MJ/m2. By hand from these:
// sine of height 0.27927 x -0.07523 + 0.96021 x 0.99717 x 0.77633 = 0.7223; sunset at arccos(0.29084 x 0.07544) = 1.5489.
const NDIAYE = { ...SITE, latDeg: 16 + 13 / 60, lonDeg: -16.25, elevationM: 8 };
const DAY = { startUtcMs: Date.UTC(2026, 9, 1), hourCount: 24 };
const SUNSET_RAD = 1.5489;
const ANGLE_AT_16_RAD = 0.682 + Math.PI / 12;

describe("the sun over FAO-56 example 19", () => {
  const sun = sunHours(DAY, NDIAYE);

  test("height is that of the middle of the hour", () => {
    expect(Math.abs(sun.heightSine[15]! - 0.7223)).toBeLessThan(0.0005);
  });

  test("above the air and under a clear sky", () => {
    expect(Math.abs(sun.extraterrestrialMjPerM2[15]! - 3.543)).toBeLessThan(0.0005);
    expect(Math.abs(sun.clearSkyMjPerM2[15]! - 2.658)).toBeLessThan(0.0005);
  });

  test("only the hour from 16 UTC, 0.605 rad before sunset, lies in the late afternoon", () => {
    expect([...sun.lateAfternoon].flatMap((one, hour) => (one ? [hour] : []))).toEqual([16]);
  });

  // The sun's angle moves with the longitude; FAO-56 ch. 4 has the late afternoon from 0.79 to 0.52 rad before sunset.
  test.each([
    { beforeRad: 0.5, late: 0 },
    { beforeRad: 0.51, late: 0 },
    { beforeRad: 0.53, late: 1 },
    { beforeRad: 0.78, late: 1 },
    { beforeRad: 0.8, late: 0 },
  ])("$beforeRad rad before sunset: $late", ({ beforeRad, late }) => {
    const turnRad = SUNSET_RAD - ANGLE_AT_16_RAD - beforeRad;
    const there = { ...NDIAYE, lonDeg: NDIAYE.lonDeg + (turnRad * 180) / Math.PI };
    expect(sunHours(DAY, there).lateAfternoon[16]).toBe(late);
  });

  test("none by night, nor in polar day or night", () => {
    expect(sunHours(DAY, { ...NDIAYE, lonDeg: 163.75 }).lateAfternoon[16]).toBe(0);
    const pole = { ...NDIAYE, latDeg: 85 };
    const winter = sunHours({ ...DAY, startUtcMs: Date.UTC(2026, 11, 21) }, pole);
    expect([...winter.lateAfternoon, ...winter.extraterrestrialMjPerM2].every((value) => value === 0)).toBe(
      true,
    );
  });
});
