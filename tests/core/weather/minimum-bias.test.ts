import { describe, expect, test } from "vitest";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import { minimumBias } from "../../../core/weather/instruments/minimum-bias.ts";
import { settleHours } from "../../../core/weather/ladder/settle-hours.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { buildWeather, SITE, START_UTC_MS } from "./build-weather.ts";

// The rule by hand: weights w halve in 14 days; the mean of differences d is drawn to w d / (2.25 + w) for a place of
// 1 °C and readings good to 1.5 °C; warming is halved, cooling ends at 3 °C.
const nowUtcMs = START_UTC_MS + (20 * 24 + 5) * HOUR_MS;
const settled = settleHours(buildWeather({ days: 30 }), SITE, { nowUtcMs, horizonHours: 24 });
/** Every day of that weather has its lowest hour at 13 °C. */
const LOWEST_C = 13;

function reading(differenceC: number, daysAgo: number): JournalEntry {
  const atUtcMs = nowUtcMs - daysAgo * 24 * HOUR_MS;
  const body = {
    kind: "thermometer",
    minC: LOWEST_C + differenceC,
    sinceUtcMs: atUtcMs - 24 * HOUR_MS,
  } as const;
  return { id: `t${differenceC}/${daysAgo}`, atUtcMs, recordedUtcMs: atUtcMs, body };
}

const biasOf = (...journal: JournalEntry[]) => minimumBias(settled, { journal, placeSdC: 1 });

describe("bias of the minimum", () => {
  test("none without a reading, with the doubt of the place", () => {
    expect(biasOf()).toEqual({ meanC: 0, sdC: 1 });
  });

  test("a fresh reading: -4 / 3.25, and 1.5 / sqrt(3.25) of doubt", () => {
    const { meanC, sdC } = biasOf(reading(-4, 0));
    expect(meanC).toBeCloseTo(-1.23077, 5);
    expect(sdC).toBeCloseTo(0.83205, 5);
  });

  test("one of a fortnight ago counts half: -2 / 2.75", () => {
    expect(biasOf(reading(-4, 14)).meanC).toBeCloseTo(-0.72727, 5);
  });

  test("a fresh -4 and an old -2: (-4 - 1) / (2.25 + 1.5)", () => {
    expect(biasOf(reading(-4, 0), reading(-2, 14)).meanC).toBeCloseTo(-1.33333, 5);
  });

  test("warming is taken by half: 0.5 x 4 / 3.25", () => {
    expect(biasOf(reading(4, 0)).meanC).toBeCloseTo(0.61538, 5);
  });

  test("cooling ends at 3 °C: four fresh nights of -4 give -2.56, of -9 no more than -3", () => {
    const nights = (differenceC: number) => [0, 0, 0, 0].map((daysAgo) => reading(differenceC, daysAgo));
    expect(biasOf(...nights(-4)).meanC).toBeCloseTo(-2.56, 5);
    expect(biasOf(...nights(-9)).meanC).toBe(-3);
  });
});
