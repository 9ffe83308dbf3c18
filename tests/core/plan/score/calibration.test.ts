import { describe, expect, it } from "vitest";
import type { EntryBody, JournalEntry } from "../../../../core/journal/entry.ts";
import type { Plan } from "../../../../core/plan/plan.ts";
import { calibration } from "../../../../core/plan/score/calibration.ts";
import { rainByDay } from "../../../../core/plan/score/told-rain.ts";
import type { CalendarDay } from "../../../../core/site/site.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";

const START_UTC_MS = Date.parse("2031-05-01T00:00Z");
const dayOf = (d: number) =>
  new Date(START_UTC_MS + d * 24 * HOUR_MS).toISOString().slice(0, 10) as CalendarDay;

/** The parts of a morning's plan that are scored: tomorrow's rain, and the dryness of one pot by day. */
function morning(d: number, told: { rainFrac: number; dryFrac?: number }): Plan {
  const outline = (day: CalendarDay) => ({
    day,
    rainShareFrac: told.rainFrac,
    rainMm: { low: 0, mid: told.rainFrac > 0.5 ? 4 : 0, high: 8 },
  });
  const row = { potId: "fig", outlook: { reachesRefillShareFrac: [told.dryFrac ?? 0, 1] } };
  return {
    zone: "UTC",
    forDay: dayOf(d),
    issuedAt: `${dayOf(d)}T06:00Z`,
    days: [outline(dayOf(d)), outline(dayOf(d + 1))],
    pots: [row],
  } as unknown as Plan;
}

const entry = (d: number, body: EntryBody, clock = 18): JournalEntry => ({
  id: `${d}-${clock}-${body.kind}`,
  potId: "fig",
  atUtcMs: START_UTC_MS + (d * 24 + clock) * HOUR_MS,
  recordedUtcMs: START_UTC_MS,
  body,
});

describe("rain that was told", () => {
  const plans = Array.from({ length: 40 }, (_, d) => morning(d, { rainFrac: d < 20 ? 0.7 : 0.1 }));
  const rainMmOn = new Map(plans.map((_, d) => [dayOf(d + 1), d < 13 || d === 25 ? 5 : 0]));
  const { rain } = calibration({ plans, rainMmOn, journal: [] });

  it("says in one sentence how often seven in ten came true", () => {
    expect(rain.count).toBe(40);
    expect(rain.telling).toMatchObject({ cameTrueFrac: 13 / 20, count: 20 });
    expect(rain.telling!.toldFrac).toBeCloseTo(0.7, 12);
  });

  it("keeps bands, score, amounts and worth", () => {
    expect(rain.bands.map(({ count }) => count)).toEqual([20, 20]);
    expect(rain.brier!.resolution).toBeGreaterThan(rain.brier!.reliability);
    expect(rain.crpsMm).toBeGreaterThan(0);
    expect(rain.valueFrac).toBeGreaterThan(0);
    expect(rain.valueFrac).toBeLessThan(1);
  });

  it("counts the first plan of a day only, and only days whose rain is known", () => {
    const again = { ...morning(0, { rainFrac: 0 }), issuedAt: `${dayOf(0)}T15:00Z` };
    const found = calibration({ plans: [again, ...plans], rainMmOn, journal: [] });
    expect(found.rain).toEqual(rain);
    expect(calibration({ plans, rainMmOn: new Map(), journal: [] }).rain.count).toBe(0);
  });

  it("says nothing from a handful of days", () => {
    const few = calibration({ plans: plans.slice(0, 6), rainMmOn, journal: [] });
    expect(few.rain.telling).toBeNull();
    expect(few.rain.bands).toHaveLength(1);
  });
});

describe("dryness that was told", () => {
  const plans = [morning(0, { rainFrac: 0, dryFrac: 0.8 }), morning(1, { rainFrac: 0, dryFrac: 0.2 })];
  const dry = (journal: JournalEntry[]) => calibration({ plans, rainMmOn: new Map(), journal }).dry;

  it("is held against how heavy the pot felt that day", () => {
    const found = dry([
      entry(0, { kind: "checked", feel: "light" }),
      entry(1, { kind: "checked", feel: "heavy" }),
    ]);
    expect(found.bands).toEqual([
      { toldFrac: 0.2, cameTrueFrac: 0, count: 1 },
      { toldFrac: 0.8, cameTrueFrac: 1, count: 1 },
    ]);
  });

  it("passes over a middling feel, a pot watered meanwhile, and looks before any plan", () => {
    const water: EntryBody = { kind: "watered", given: { kind: "ran-through" } };
    expect(dry([entry(0, { kind: "checked", feel: "middling" })]).count).toBe(0);
    expect(dry([entry(0, water, 7), entry(0, { kind: "checked", feel: "heavy" })]).count).toBe(0);
    expect(dry([entry(0, { kind: "checked", feel: "heavy" }, 5)]).count).toBe(0);
  });
});

describe("rain by day", () => {
  it("sums whole local days and leaves out those cut short or unknown", () => {
    const rainMm = new Float64Array(60).fill(0.5);
    rainMm[30] = Number.NaN;
    const found = rainByDay({ startUtcMs: START_UTC_MS, hourCount: 60, hours: { rainMm } }, "UTC");
    expect([...found]).toEqual([[dayOf(0), 12]]);
  });
});
