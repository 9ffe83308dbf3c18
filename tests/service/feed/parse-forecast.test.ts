import { describe, expect, it } from "vitest";
import { dewPointFromDeficitC, dewPointFromHumidityC } from "../../../core/weather/dew-point.ts";
import { HourlyAnswer } from "../../../service/feed/open-meteo/answer-schema.ts";
import { parseForecast } from "../../../service/feed/open-meteo/parse-forecast.ts";
import { forecastBody, type HourlyBody, STAMPS } from "./wire-answers.ts";

function parsed(spoil: (body: HourlyBody) => void) {
  const body = forecastBody();
  spoil(body);
  const outcome = parseForecast(HourlyAnswer.parse(body));
  if (!outcome.ok) throw new Error(outcome.problems[0]?.code);
  return outcome.value;
}

function put(body: HourlyBody, column: { key: string; unit: string; value: number | null }): void {
  body.hourly_units[column.key] = column.unit;
  body.hourly[column.key] = Array.from({ length: STAMPS }, () => column.value);
}

describe("humidity where only part of the columns is there", () => {
  it("comes from relative humidity at each stamp before it is averaged", () => {
    const { hours } = parsed((body) => {
      delete body.hourly.dew_point_2m;
      put(body, { key: "relative_humidity_2m", unit: "%", value: 65 });
    });
    // Stamps 0 and 1 are 14 and 14.5 °C.
    const meanC = (dewPointFromHumidityC(14, 0.65) + dewPointFromHumidityC(14.5, 0.65)) / 2;
    expect(hours.dewPointC[0]).toBeCloseTo(meanC, 9);
  });

  it("comes from the vapour pressure deficit when that is all there is", () => {
    const { hours } = parsed((body) => {
      delete body.hourly.dew_point_2m;
      put(body, { key: "vapour_pressure_deficit", unit: "kPa", value: 0.6 });
    });
    const meanC = (dewPointFromDeficitC(14, 0.6) + dewPointFromDeficitC(14.5, 0.6)) / 2;
    expect(hours.dewPointC[0]).toBeCloseTo(meanC, 9);
  });

  it("fills single gaps and leaves told dew points alone", () => {
    const { hours } = parsed((body) => {
      put(body, { key: "relative_humidity_2m", unit: "%", value: 65 });
      body.hourly.dew_point_2m![1] = null;
    });
    expect(hours.dewPointC[0]).toBeCloseTo((9 + dewPointFromHumidityC(14.5, 0.65)) / 2, 9);
    expect(hours.dewPointC[2]).toBeCloseTo((9.2 + 9.3) / 2, 9);
  });
});

describe("columns by hour", () => {
  it("hour i ends i + 1 hours after the first stamp", () => {
    const { startUtcMs, hourCount, hours } = parsed((body) => {
      body.hourly.precipitation!.fill(0);
      body.hourly.precipitation![7] = 4.5;
    });
    expect(startUtcMs).toBe(Date.UTC(2026, 4, 11));
    expect(hourCount).toBe(STAMPS - 1);
    // Stamp 7 is 07:00; its sum fell from 06:00 to 07:00, the hour of index 6.
    expect(hours.rainMm[6]).toBe(4.5);
    expect(hours.rainMm[7]).toBe(0);
  });

  it("a thunder code marks both hours that its instant bounds", () => {
    const { hours } = parsed((body) => {
      body.hourly.weather_code!.fill(1);
      body.hourly.weather_code![30] = 95;
    });
    expect([...hours.weatherCode.slice(28, 32)]).toEqual([1, 95, 95, 1]);
  });

  it("the first row of an hour told twice counts", () => {
    const { hours } = parsed((body) => {
      for (const key of Object.keys(body.hourly)) body.hourly[key]!.push(body.hourly[key]![5]);
      body.hourly.precipitation![STAMPS] = 99;
    });
    expect(hours.rainMm[4]).toBe(0);
  });

  it("minus zero is zero", () => {
    const { hours } = parsed((body) => {
      body.hourly.temperature_2m!.fill(-0);
    });
    expect(Object.is(hours.tempC[0], 0)).toBe(true);
  });

  it("300 W/m2 over an hour is 1.08 MJ/m2", () => {
    const { hours } = parsed((body) => {
      body.hourly.shortwave_radiation!.fill(300);
    });
    expect(hours.radiationMjPerM2[0]).toBeCloseTo(1.08, 12);
  });
});
