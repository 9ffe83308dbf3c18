import { createRequire } from "node:module";
import { beforeAll, describe, expect, it } from "vitest";
import { dewPointFromDeficitC, dewPointFromHumidityC } from "../../../core/weather/dew-point.ts";

/** The library comes without types; these are the functions used. Temperatures in °C, pressures in Pa. */
interface Psychrometrics {
  readonly SI: number;
  SetUnitSystem(system: number): void;
  GetTDewPointFromRelHum(tempC: number, humidityFrac: number): number;
  GetSatVapPres(tempC: number): number;
  GetVapPresFromRelHum(tempC: number, humidityFrac: number): number;
}
const psychrolib = createRequire(import.meta.url)("psychrolib") as Psychrometrics;

/**
 * Dew points of the library PsychroLib (Meyer, D.; Thevenard, D., Journal of Open Source Software 4(33), 1137, 2019),
 * which solves the saturation equations of the ASHRAE Handbook of Fundamentals 2017. Ours uses the equation of FAO
 * paper 56: measured apart by at most 0.016 °C from humidity, and 0.081 °C from the deficit, where the difference of
 * two large pressures is taken with the other equation. Below freezing the library takes the pressure over ice and
 * tells a frost point, so nothing is compared there.
 */
const AIR = [
  [5, 0.75],
  [10, 0.6],
  [15, 0.9],
  [20, 0.5],
  [25, 0.3],
  [30, 0.7],
  [35, 0.4],
  [40, 0.2],
] as const;
const FROM_HUMIDITY_TOLERANCE_C = 0.02;
const FROM_DEFICIT_TOLERANCE_C = 0.1;

describe("dew point against PsychroLib", () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI));

  it("has all its cases", () => expect(AIR.length).toBe(8));

  it.each(AIR)("air of %d °C at humidity %d", (tempC, humidityFrac) => {
    const theirsC = psychrolib.GetTDewPointFromRelHum(tempC, humidityFrac);
    expect(Math.abs(dewPointFromHumidityC(tempC, humidityFrac) - theirsC)).toBeLessThan(
      FROM_HUMIDITY_TOLERANCE_C,
    );
    const vapourPa = psychrolib.GetVapPresFromRelHum(tempC, humidityFrac);
    const vpdKPa = (psychrolib.GetSatVapPres(tempC) - vapourPa) / 1000;
    expect(Math.abs(dewPointFromDeficitC(tempC, vpdKPa) - theirsC)).toBeLessThan(FROM_DEFICIT_TOLERANCE_C);
  });

  it("is unknown where humidity is unknown or none", () => {
    expect(dewPointFromHumidityC(20, Number.NaN)).toBeNaN();
    expect(dewPointFromHumidityC(20, 0)).toBeNaN();
    expect(dewPointFromDeficitC(20, 9)).toBeNaN();
  });
});
