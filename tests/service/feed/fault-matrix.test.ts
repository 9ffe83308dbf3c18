import { describe, expect, it } from "vitest";
import type { Weather } from "../../../core/weather/weather.ts";
import type { FaultCase } from "./fault-case.ts";
import { FAULT_CASES, faultAnswer, faultRow } from "./fault-matrix.ts";
import { STAMPS, told } from "./wire-answers.ts";

describe("a feed that behaves badly ends in a stated state", () => {
  it("has forty behaviours or more, each its own", () => {
    expect(FAULT_CASES.length).toBeGreaterThanOrEqual(40);
    expect(new Set(FAULT_CASES.map((fault) => fault.behaviour)).size).toBe(FAULT_CASES.length);
  });

  it.each(FAULT_CASES)("$behaviour -> $ends", async (fault) => {
    const row = await faultRow(fault);
    expect(row.seen).toBe(row.expected);
    expect(row.tookMs).toBeLessThan(10_000);
  });
});

describe("what is used is right to the hour", () => {
  it.each([
    "packed honestly",
    "redirects once to a good answer",
    "true Latin-1, named",
    "bare nan for the coordinates",
    "other documented units",
    "hours told twice",
    "hours in reverse",
    "local time of a half-hour zone",
    "epoch seconds of a half-hour zone",
    "-0 for no rain",
  ])("%s", async (behaviour) => {
    const weather = await weatherIn(behaviour);
    expect(weather.hourCount).toBe(STAMPS - 1);
    expectColumn(weather.hours.tempC, (i) => (told.tempC(i) + told.tempC(i + 1)) / 2);
    expectColumn(weather.hours.rainMm, (i) => told.rainMm(i + 1));
    expectColumn(weather.hours.windMPerS, (i) => (told.windMPerS(i) + told.windMPerS(i + 1)) / 2);
    expectColumn(weather.hours.gustMPerS, (i) => told.gustMPerS(i + 1));
    expectColumn(weather.hours.radiationMjPerM2, (i) => (told.radiationWPerM2(i + 1) * 3600) / 1e6);
    expect(weather.hours.rainMm.some((rainMm) => Object.is(rainMm, -0))).toBe(false);
  });

  it("leaves only the hours around a hole unknown", async () => {
    const { hours } = await weatherIn("hours missing");
    // Stamps 50 to 52 are gone: no rain total for hours 49 to 51, no pair of ends for hours 49 to 52.
    expect(unknownHours(hours.rainMm)).toEqual([49, 50, 51]);
    expect(unknownHours(hours.tempC)).toEqual([49, 50, 51, 52]);
  });

  it("leaves the two hours beside one impossible value unknown", async () => {
    const { hours } = await weatherIn("a single value beyond the possible");
    expect(unknownHours(hours.tempC)).toEqual([99, 100]);
  });

  it("keeps what is missing at the end as unknown", async () => {
    const { hours, hourCount } = await weatherIn("nulls in the last days");
    const last48 = Array.from({ length: 48 }, (_, i) => hourCount - 48 + i);
    expect(unknownHours(hours.rainMm)).toEqual(last48);
    expect(unknownHours(hours.tempC)).toEqual(last48);
  });

  it("lays members innermost, and a spoilt member is unknown alone", async () => {
    const { hours, members, hourCount } = await weatherIn("one member of another length");
    expect(members?.tempC.length).toBe(hourCount * 4);
    // The ensemble begins today, two days into the axis.
    expect(members?.tempC[47 * 4]).toBeNaN();
    const at = (hour: number, member: number) => members?.tempC[hour * 4 + member];
    expect(at(60, 0)).toBeCloseTo(hours.tempC[60]!, 9);
    expect(at(60, 1)).toBeCloseTo(hours.tempC[60]! + 0.1, 9);
    expect(at(60, 2)).toBeNaN();
    expect(at(60, 3)).toBeCloseTo(hours.tempC[60]! + 0.3, 9);
  });
});

async function weatherIn(behaviour: string): Promise<Weather> {
  const fault = FAULT_CASES.find((one) => one.behaviour === behaviour) as FaultCase;
  const answer = await faultAnswer(fault);
  if (!answer.ok) throw new Error(`${behaviour}: ${answer.problems[0]?.code}`);
  return answer.value;
}

function expectColumn(column: Float64Array, value: (hour: number) => number): void {
  const worst = column.reduce((most, seen, hour) => Math.max(most, Math.abs(seen - value(hour))), 0);
  expect(column.some(Number.isNaN)).toBe(false);
  expect(worst).toBeLessThan(1e-9);
}

function unknownHours(column: Float64Array): number[] {
  return [...column.keys()].filter((hour) => Number.isNaN(column[hour]!));
}
