import { describe, expect, it } from "vitest";
import type { DayOutline } from "../../../../core/plan/plan.ts";
import { DayStrip } from "../../../../service/pages/drawing/day-strip.tsx";
import { DaysBand } from "../../../../service/pages/drawing/days-band.tsx";
import { wordsFor } from "../../../../service/words/words.ts";
import { day, flat } from "../../brief/plan-builder.ts";

const HOUR_MS = 3_600_000;
const english = wordsFor("en", "metric");
const SATURDAY_18 = Date.parse("2026-11-28T18:00Z");

function stripOf(deeds: Parameters<typeof DayStrip>[0]["deeds"] = [], words = english): string {
  const hours = Array.from({ length: 24 }, (_, hour) => ({
    startUtcMs: SATURDAY_18 + hour * HOUR_MS,
    tempC: 20 - hour / 2,
    rainMm: { low: 0, mid: hour === 20 ? 3 : 0, high: hour === 20 ? 9 : 0 },
    gustMPerS: 5 + hour / 4,
    isDay: hour > 12,
  }));
  return DayStrip({ hours, thunderUtcMs: [], deeds, zone: "UTC", label: "", words })!.toString();
}

interface Written {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

function textsIn(svg: string): Written[] {
  return [...svg.matchAll(/<text([^>]*)>([^<]*)<\/text>/g)].map(([, head = "", text = ""]) => ({
    text,
    x: Number(/\bx="([^"]+)"/.exec(head)![1]),
    y: Number(/\by="([^"]+)"/.exec(head)![1]),
  }));
}

describe("the strip of hours", () => {
  it("names the day at its beginning and at midnight, and the clock between", () => {
    const marks = textsIn(stripOf()).filter(({ y }) => y === 12);
    expect(marks.map(({ text }) => text)).toEqual(["Sat 18:00", "Sun", "06:00", "12:00"]);
  });

  it("leaves the first day's name out where it would touch the next mark", () => {
    const marks = textsIn(stripOf([], wordsFor("hi-IN-u-hc-h12", "metric"))).filter(({ y }) => y === 12);
    expect(marks.map(({ text }) => text.split(" ").length)).toEqual([2, 1, 2, 2]);
  });

  it("writes warmth, rain and gusts on lines of their own, a letter's height apart", () => {
    const lines = [...new Set(textsIn(stripOf()).map(({ y }) => y))].sort((a, b) => a - b);
    expect(lines).toHaveLength(5);
    for (const [index, y] of lines.slice(1).entries()) expect(y - lines[index]!).toBeGreaterThanOrEqual(12);
  });

  it("hangs a deed beside its line and not upon it", () => {
    const svg = stripOf([{ atUtcMs: SATURDAY_18 + 2 * HOUR_MS, text: "20:00 water fig", short: "20:00" }]);
    const line = Number(/class="strip-drop" d="M([\d.]+) /.exec(svg)![1]);
    expect(textsIn(svg).find(({ text }) => text === "20:00 water fig")!.x).toBeGreaterThan(line + 2);
  });
});

function outlookOf(dayCount: number): DayOutline[] {
  return Array.from({ length: dayCount }, (_, index) => ({
    day: day(new Date(SATURDAY_18 + index * 24 * HOUR_MS).toISOString().slice(0, 10)),
    rainMm: flat(0),
    rainShareFrac: 0,
    peakRainMmPerH: 0,
    tempMinC: { low: 3, mid: 7, high: 9 },
    tempMaxC: { low: 15, mid: 18, high: 24 },
    gustMPerS: 4,
    et0Mm: 3,
    thunderHours: [],
  }));
}

describe("the band of days", () => {
  it.each([
    [8, 1],
    [9, 2],
    [14, 2],
  ])("has %d days in %d rows", (dayCount, rowCount) => {
    const svg = DaysBand({ days: outlookOf(dayCount), words: english })!.toString();
    expect(svg.match(/<g transform=/g)).toHaveLength(rowCount);
    expect(textsIn(svg).filter(({ text }) => /^[A-Z]/.test(text))).toHaveLength(dayCount);
  });

  it("writes the coldest and the hottest clear of what they may come to", () => {
    const svg = DaysBand({ days: outlookOf(1), words: english })!.toString();
    const [, ticks = ""] = /class="band-spread" d="([^"]+)"/.exec(svg)!;
    const tickYs = [...ticks.matchAll(/M[\d.]+ ([\d.]+)/g)].map(([, y]) => Number(y));
    const at = (text: string) => textsIn(svg).find((one) => one.text === text)!.y;
    expect(at("18")).toBeLessThan(Math.min(...tickYs));
    expect(at("7") - 10).toBeGreaterThan(Math.max(...tickYs));
  });
});
