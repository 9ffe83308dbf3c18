import { describe, expect, it } from "vitest";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { FallbackAnswer } from "../../../service/feed/met-norway/answer-schema.ts";
import { parseFallback } from "../../../service/feed/met-norway/parse-fallback.ts";
import { weatherCodeOfSymbol } from "../../../service/feed/met-norway/symbol-code.ts";
import { type FallbackBody, fallbackBody, NOW_UTC_MS } from "./wire-answers.ts";

function parsed(spoil: (body: FallbackBody) => void = () => undefined, nowUtcMs = NOW_UTC_MS) {
  const body = fallbackBody();
  spoil(body);
  const outcome = parseFallback(FallbackAnswer.parse(body), nowUtcMs);
  if (!outcome.ok) throw new Error(outcome.problems[0]?.code);
  return outcome.value;
}

const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);

describe("hours of the fallback", () => {
  it("an hourly amount falls in the hour that begins at its stamp", () => {
    const { startUtcMs, hours } = parsed((body) => {
      body.properties.timeseries[2]!.data.next_1_hours!.details.precipitation_amount = 4;
    });
    expect(startUtcMs).toBe(NOW_UTC_MS - (NOW_UTC_MS % HOUR_MS));
    // Stamp 2 begins the hour that ends at start + 3 h, which is index 2.
    expect([...hours.rainMm.slice(0, 4)]).toEqual([0.5, 0.5, 4, 0.5]);
  });

  it("no amount is counted twice: six hours by the hour, then eight steps of six", () => {
    const { hours, hourCount } = parsed();
    expect(hourCount).toBe(54);
    expect(sum(hours.rainMm)).toBeCloseTo(6 * 0.5 + 8 * 3, 9);
    expect([...hours.rainMm.slice(6, 12)]).toEqual([0.5, 0.5, 0.5, 0.5, 0.5, 0.5]);
  });

  it("a long step that tells its first hour too is still shared evenly", () => {
    const { hours } = parsed((body) => {
      const step = body.properties.timeseries[6]!.data;
      step.next_1_hours = { summary: { symbol_code: "rain" }, details: { precipitation_amount: 2 } };
    });
    expect(hours.rainMm[6]).toBe(0.5);
  });

  it("the long steps are flagged from where they begin", () => {
    const { coarseFromUtcMs, notes } = parsed();
    expect(coarseFromUtcMs).toBe(NOW_UTC_MS - (NOW_UTC_MS % HOUR_MS) + 6 * HOUR_MS);
    expect(notes.map((note) => note.code)).toEqual(["feed-coarse-tail"]);
  });

  it("instants run straight between steps and are averaged over the hour", () => {
    const { hours } = parsed();
    // 10 °C rising by half a degree an hour, without a kink at the first long step.
    hours.tempC.forEach((tempC, hour) => {
      expect(tempC).toBeCloseTo(10 + (hour + 0.5) / 2, 9);
    });
  });

  it("a night's low inside a long step is reached", () => {
    const { hours } = parsed((body) => {
      body.properties.timeseries[7]!.data.next_6_hours!.details.air_temperature_min = -2;
    });
    // Steps at 12 h (16 °C) and 18 h (19 °C); straight down to -2 at 15 h: the hours beside it average to (1, 1.5).
    expect(Math.min(...hours.tempC)).toBeCloseTo((-2 + (16 + ((-2 - 16) * 2) / 3)) / 2, 9);
    expect(hours.tempC[11]).toBeCloseTo(15.75, 9);
    expect(hours.tempC[18]).toBeCloseTo(19.25, 9);
  });

  it("a hole longer than six hours stays unknown", () => {
    const { hours } = parsed((body) => {
      body.properties.timeseries.splice(9, 1);
    });
    expect(hours.tempC.slice(18, 30).every(Number.isNaN)).toBe(true);
    expect(hours.tempC[17]).not.toBeNaN();
    expect(hours.tempC[30]).not.toBeNaN();
    expect(hours.rainMm[23]).toBe(0.5);
    expect(hours.rainMm[24]).toBeNaN();
  });

  it("a first step still to come holds back to the hour we are in, no further than two hours", () => {
    const early = parsed(undefined, NOW_UTC_MS - 2 * HOUR_MS);
    expect(early.hourCount).toBe(56);
    expect(early.hours.tempC[0]).toBe(10);
    expect(parsed(undefined, NOW_UTC_MS - 3 * HOUR_MS).hourCount).toBe(54);
  });

  it("a value in a strange unit is unknown and named", () => {
    const { hours, notes } = parsed((body) => {
      body.properties.meta.units.wind_speed = "knots";
    });
    expect(hours.windMPerS.every(Number.isNaN)).toBe(true);
    expect(notes[0]).toMatchObject({ code: "feed-column-unit", data: { column: "wind_speed" } });
  });

  it("steps in disorder, twice or off the hour do no harm", () => {
    const straight = parsed();
    const mixed = parsed((body) => {
      const { timeseries } = body.properties;
      timeseries.push({ ...timeseries[3]!, time: "2026-05-13T15:30:00Z" }, timeseries[4]!);
      timeseries.reverse();
    });
    expect(mixed.hours.tempC).toEqual(straight.hours.tempC);
    expect(mixed.hours.rainMm).toEqual(straight.hours.rainMm);
  });

  it("without temperature there is no forecast", () => {
    const body = fallbackBody();
    for (const step of body.properties.timeseries) step.data.instant.details.air_temperature = null;
    const outcome = parseFallback(FallbackAnswer.parse(body), NOW_UTC_MS);
    expect(outcome.ok ? "used" : outcome.problems[0]?.code).toBe("feed-no-temperature");
  });
});

describe("symbols as codes of WMO table 4677 (from memory of the table)", () => {
  it.each([
    ["clearsky_night", 0],
    ["partlycloudy_day", 2],
    ["fog", 45],
    ["heavyrain", 65],
    ["lightsnowshowers_polartwilight", 85],
    ["rainshowersandthunder_day", 95],
    ["lightssleetshowersandthunder_day", 95],
  ])("%s is %d", (symbol, code) => {
    expect(weatherCodeOfSymbol(symbol)).toBe(code);
  });

  it("one that is not known is unknown", () => {
    expect(weatherCodeOfSymbol("frogs")).toBeNaN();
    expect(weatherCodeOfSymbol(undefined)).toBeNaN();
  });
});
