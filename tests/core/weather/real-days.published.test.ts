import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { dayOfYear } from "../../../core/site/day-of-year.ts";
import { extraterrestrialDayMjPerM2 } from "../../../core/weather/extraterrestrial.ts";
import { shortwaveFromRange } from "../../../core/weather/shortwave.ts";
import { et0DailyWork } from "../../../core/weather/work/et0-daily-work.ts";
import { et0TemperatureWork } from "../../../core/weather/work/et0-temperature-work.ts";

// Open data: vega-datasets 3, weather.csv, Seattle and New York 2012 to 2015 (from NOAA's daily summaries). Humidity and
// sun are not in it: dew point stands as the minimum less 2 °C, sun comes from the range by the sea.
// A published annual reference evapotranspiration of either city was looked for and could not be read, so the years are
// held only against each other and against what is possible.
const FILE = new URL("../../../node_modules/vega-datasets/data/weather.csv", import.meta.url);

const PLACES = {
  Seattle: { latDeg: 47.45, elevationM: 130 },
  "New York": { latDeg: 40.78, elevationM: 40 },
} as const;

interface Day {
  readonly location: keyof typeof PLACES;
  readonly year: number;
  readonly month: number;
  readonly penmanMm: number;
  readonly hargreavesMm: number;
}

const DAYS: Day[] = readFileSync(FILE, "utf8")
  .trim()
  .split("\n")
  .slice(1)
  .map((line) => {
    const [location, date, , max, min, wind] = line.split(",") as [keyof typeof PLACES, ...string[]];
    const place = PLACES[location];
    const utcMs = Date.parse(`${date}T00:00Z`);
    const day = { ...place, dayOfYear: dayOfYear(utcMs), tempMinC: Number(min), tempMaxC: Number(max) };
    const extraterrestrialMjPerM2 = extraterrestrialDayMjPerM2(day);
    const { et0Mm: penmanMm } = et0DailyWork({
      ...day,
      dewPointC: day.tempMinC - 2,
      windMPerS: Number(wind),
      windHeightM: 10,
      radiationMjPerM2: shortwaveFromRange({ ...day, extraterrestrialMjPerM2, coastal: true }),
    });
    const hargreavesMm = et0TemperatureWork(day).et0Mm;
    return {
      location,
      year: Number(date!.slice(0, 4)),
      month: Number(date!.slice(5, 7)),
      penmanMm,
      hargreavesMm,
    };
  });

const totalMm = (days: readonly Day[], by: "penmanMm" | "hargreavesMm") =>
  days.reduce((sum, day) => sum + day[by], 0);

test("every day of two stations in four years gives a plausible value", () => {
  expect(DAYS.length).toBe(2922);
  for (const day of DAYS) {
    // The wettest sea air and the hottest dry wind on record stay between these.
    expect(day.penmanMm).toBeGreaterThan(-0.5);
    expect(day.penmanMm).toBeLessThan(10);
    expect(day.hargreavesMm).toBeGreaterThanOrEqual(-0.05);
    expect(day.hargreavesMm).toBeLessThan(9);
  }
});

describe.each(Object.keys(PLACES) as (keyof typeof PLACES)[])("%s", (location) => {
  const years = [2012, 2013, 2014, 2015].map((year) =>
    DAYS.filter((d) => d.location === location && d.year === year),
  );

  test("a year lies between 600 and 1300 mm, summer over three times winter", () => {
    for (const year of years) {
      const summer = totalMm(
        year.filter(({ month }) => month >= 6 && month <= 8),
        "penmanMm",
      );
      const winter = totalMm(
        year.filter(({ month }) => month <= 2 || month === 12),
        "penmanMm",
      );
      expect(totalMm(year, "penmanMm")).toBeGreaterThan(600);
      expect(totalMm(year, "penmanMm")).toBeLessThan(1300);
      // Measured: 3.5 in mild windy New York winters to 5.9 in Seattle.
      expect(summer / winter).toBeGreaterThan(3);
    }
  });

  test("Penman and Monteith and Hargreaves and Samani agree on a year to a quarter", () => {
    for (const year of years) {
      const ratio = totalMm(year, "penmanMm") / totalMm(year, "hargreavesMm");
      expect(Math.abs(ratio - 1)).toBeLessThan(0.25);
    }
  });
});
