import { describe, expect, test } from "vitest";
import { airPressureKPa, psychrometricKPaPerC } from "../../../core/weather/air-pressure.ts";
import { extraterrestrialDayMjPerM2 } from "../../../core/weather/extraterrestrial.ts";
import { saturationSlopeKPaPerC, saturationVapourPressureKPa } from "../../../core/weather/humidity.ts";
import { netLongwaveDayMjPerM2 } from "../../../core/weather/longwave.ts";
import { daylightHours } from "../../../core/weather/sun-geometry.ts";
import { windFactorTo2m } from "../../../core/weather/wind-profile.ts";
import {
  DAYLIGHT_SOUTH_HOURS,
  GAMMA_KPA_PER_C,
  MID_MONTH_DAYS,
  PRESSURE_KPA,
  RA_SOUTH_MJ_PER_M2,
  SATURATION_KPA,
  SIGMA_T4_MJ_PER_M2,
  SLOPE_KPA_PER_C,
  WIND_FACTOR,
} from "./annex2-tables.ts";
import { expectPrinted } from "./printed-value.ts";

/** In dry air (ea 0) under a clear sky (ratio 1) eq. 39 is 0.34 sigma T4, so it gives the table back. */
function sigmaT4(tempC: number): number {
  const dryAndClear = { tempMinC: tempC, tempMaxC: tempC, vapourPressureKPa: 0, cloudRatioFrac: 1 };
  return netLongwaveDayMjPerM2(dryAndClear) / 0.34;
}

const TABLES = [
  { table: "2.1", rows: PRESSURE_KPA, ours: airPressureKPa, count: 14 },
  {
    table: "2.2",
    rows: GAMMA_KPA_PER_C,
    ours: (m: number) => psychrometricKPaPerC(airPressureKPa(m)),
    count: 14,
  },
  { table: "2.3", rows: SATURATION_KPA, ours: saturationVapourPressureKPa, count: 17 },
  { table: "2.4", rows: SLOPE_KPA_PER_C, ours: saturationSlopeKPaPerC, count: 16 },
  { table: "2.8", rows: SIGMA_T4_MJ_PER_M2, ours: sigmaT4, count: 16 },
  { table: "2.9", rows: WIND_FACTOR, ours: windFactorTo2m, count: 13 },
];

describe.each(TABLES)("FAO-56 Annex 2 table $table", ({ rows, ours, count }) => {
  test.each(rows)("at %d: %s", (at, printed) => {
    expectPrinted({ what: `at ${at}`, got: ours(at), printed });
  });
  test("no row was dropped", () => {
    expect(rows.length).toBe(count);
  });
});

// The paper does not say which day stands for a month. With the 15th as day number of the common year the misses stay
// under these limits; they are the table's own rounding and its choice of day, not a fault that could be mended here.
describe.each([
  // Measured: 0.10 to 60 degrees, 0.131 at 70.
  {
    table: "2.6",
    rows: RA_SOUTH_MJ_PER_M2,
    ours: extraterrestrialDayMjPerM2,
    within: (south: number) => (south <= 60 ? 0.11 : 0.132),
    cells: 120,
  },
  // Measured: 0.055.
  { table: "2.7", rows: DAYLIGHT_SOUTH_HOURS, ours: daylightHours, within: () => 0.06, cells: 96 },
])("FAO-56 Annex 2 table $table, southern half", ({ rows, ours, within, cells }) => {
  test.each(rows)("%d degrees south", (south, months) => {
    months.forEach((printed, month) => {
      const got = ours({ latDeg: -south, dayOfYear: MID_MONTH_DAYS[month]! });
      expect(Math.abs(got - printed), `month ${month + 1}`).toBeLessThanOrEqual(within(south));
    });
  });
  test("no cell was dropped", () => {
    expect(rows.reduce((sum, [, months]) => sum + months.length, 0)).toBe(cells);
  });
});
