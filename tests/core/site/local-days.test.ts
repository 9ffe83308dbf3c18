import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, test } from "vitest";
import { calendarDay, localDays, localHour, utcMsOfLocal } from "../../../core/site/local-days.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { zoneOffsetMs } from "../../../core/site/zone-offset.ts";

const day = (text: string) => text as CalendarDay;

// Lord Howe changes by half an hour: its long day has 24.5 hours, of which whole hours show 24.
describe("days of an axis", () => {
  test.each([
    { zone: "America/Toronto", from: "2026-03-07T05:00Z", lengths: [24, 23, 24] },
    { zone: "America/Toronto", from: "2026-10-31T04:00Z", lengths: [24, 25, 24] },
    { zone: "Australia/Lord_Howe", from: "2026-04-03T13:00Z", lengths: [24, 24, 24] },
    { zone: "Asia/Kolkata", from: "2026-06-01T18:00Z", lengths: [24, 24, 24] },
    { zone: "Asia/Kathmandu", from: "2026-06-01T18:00Z", lengths: [24, 24, 24] },
    { zone: "Pacific/Apia", from: "2026-06-01T11:00Z", lengths: [24, 24, 24] },
  ])("$zone from $from: $lengths", ({ zone, from, lengths }) => {
    const hourCount = lengths.reduce((a, b) => a + b, 0);
    const days = localDays({ startUtcMs: Date.parse(from), hourCount }, zone);
    const found = days.map(({ fromHour, toHour }) => toHour - fromHour);
    expect(found).toEqual(lengths);
    expect(days.at(-1)!.toHour).toBe(hourCount);
  });

  test("the first and the last day may be cut", () => {
    const days = localDays({ startUtcMs: Date.parse("2026-06-01T20:00Z"), hourCount: 10 }, "UTC");
    expect(days).toEqual([
      { day: "2026-06-01", fromHour: 0, toHour: 4 },
      { day: "2026-06-02", fromHour: 4, toHour: 10 },
    ]);
  });

  test("an empty axis has no days", () => {
    expect(localDays({ startUtcMs: 0, hourCount: 0 }, "UTC")).toEqual([]);
  });
});

describe("local clock to instant", () => {
  test.each([
    { what: "plain", day: "2026-06-01", hour: 6, zone: "Asia/Kolkata", utc: "2026-06-01T00:30Z" },
    {
      what: "skipped, moved on",
      day: "2026-03-08",
      hour: 2.5,
      zone: "America/Toronto",
      utc: "2026-03-08T07:30Z",
    },
    {
      what: "shown twice, the first",
      day: "2026-11-01",
      hour: 1.5,
      zone: "America/Toronto",
      utc: "2026-11-01T05:30Z",
    },
    {
      what: "midnight that is skipped",
      day: "2026-04-24",
      hour: 0,
      zone: "Africa/Cairo",
      utc: "2026-04-23T22:00Z",
    },
    {
      what: "evening of the long day, which is past the change",
      day: "2026-11-01",
      hour: 18,
      zone: "America/Toronto",
      utc: "2026-11-01T23:00Z",
    },
    {
      what: "evening of the short day",
      day: "2026-03-08",
      hour: 18,
      zone: "America/Toronto",
      utc: "2026-03-08T22:00Z",
    },
    {
      what: "evening before the short day",
      day: "2026-03-07",
      hour: 18,
      zone: "America/Toronto",
      utc: "2026-03-07T23:00Z",
    },
    {
      what: "evening before the long day",
      day: "2026-10-31",
      hour: 18,
      zone: "America/Toronto",
      utc: "2026-10-31T22:00Z",
    },
    {
      what: "skipped by half an hour",
      day: "2026-10-04",
      hour: 2.25,
      zone: "Australia/Lord_Howe",
      utc: "2026-10-03T15:45Z",
    },
    {
      what: "24 o'clock is the next day",
      day: "2026-06-01",
      hour: 24,
      zone: "UTC",
      utc: "2026-06-02T00:00Z",
    },
  ])("$what: $day $hour in $zone", ({ day: text, hour, zone, utc }) => {
    expect(new Date(utcMsOfLocal(day(text), hour, zone)).toISOString().slice(0, 16)).toBe(utc.slice(0, 16));
  });

  test("a zone that is none, or an instant that is none, is refused", () => {
    expect(() => zoneOffsetMs(0, "Mars/Olympus")).toThrow(RangeError);
    expect(() => zoneOffsetMs(Number.NaN, "UTC")).toThrow(RangeError);
    expect(() => utcMsOfLocal(day("2026-06-01"), Number.NaN, "UTC")).toThrow(RangeError);
  });
});

// Outside truth: luxon, which reads the same zone data by other means.
const ZONES = [
  "UTC",
  "America/Toronto",
  "Asia/Kolkata",
  "Asia/Kathmandu",
  "Australia/Lord_Howe",
  "America/St_Johns",
  "Africa/Casablanca",
  "Pacific/Kiritimati",
  "Europe/Dublin",
];

test("agrees with luxon on day and clock at any instant from 1970 to 2037", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2_145_000_000 }), fc.constantFrom(...ZONES), (seconds, zone) => {
      const truth = DateTime.fromSeconds(seconds, { zone });
      expect(zoneOffsetMs(seconds * 1000, zone)).toBe(truth.offset * 60_000);
      expect(calendarDay(seconds * 1000, zone)).toBe(truth.toISODate());
      const clock = truth.hour + truth.minute / 60 + truth.second / 3600;
      expect(localHour(seconds * 1000, zone)).toBeCloseTo(clock, 9);
    }),
    { numRuns: 1000, seed: 11 },
  );
});

test("a local day and hour that the clocks show is the first instant at which luxon shows it", () => {
  const start = Date.UTC(1996, 0, 1);
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 41 * 365 }),
      fc.integer({ min: 0, max: 95 }),
      fc.constantFrom(...ZONES),
      (dayNumber, quarter, zone) => {
        const text = new Date(start + dayNumber * 86_400_000).toISOString().slice(0, 10);
        const hour = Math.floor(quarter / 4);
        const minute = 15 * (quarter % 4);
        const told = DateTime.fromISO(text, { zone }).set({ hour, minute });
        const isSkipped = told.hour !== hour || told.minute !== minute;
        const first = Math.min(...told.getPossibleOffsets().map((at) => at.toMillis()));
        if (!isSkipped) expect(utcMsOfLocal(day(text), quarter / 4, zone)).toBe(first);
      },
    ),
    { numRuns: 4000, seed: 12 },
  );
});
