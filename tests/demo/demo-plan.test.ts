import { beforeAll, describe, expect, it } from "vitest";
import type { Action, Deed } from "../../core/plan/deed.ts";
import { planFrom } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import { weigh } from "../../core/plan/weigh.ts";
import type { Problem } from "../../core/problem.ts";
import { demoCase } from "../../demo/demo-case.ts";
import { demoCollection } from "../../demo/harbour.ts";

const HOUR_MS = 3_600_000;

/** Hours of the day and seasons at which somebody may start the demonstration; UTC, the roof is an hour behind. */
const NOWS = [
  "2031-01-14T06:40Z",
  "2031-03-30T09:15Z",
  "2031-06-21T12:00Z",
  "2031-08-09T17:30Z",
  "2031-10-26T00:20Z",
  "2032-02-29T22:10Z",
];

const deedsOf = (row: PotPlan): Deed[] => [row, ...row.then];
const outdoors = new Set(demoCollection.spots.filter(({ kind }) => kind !== "indoors").map(({ id }) => id));

describe.each(NOWS)("the plan of the demonstration, started at %s", (text) => {
  const nowUtcMs = Date.parse(text);
  let plan: Plan;
  let notes: readonly Problem[];

  beforeAll(async () => {
    const demo = await demoCase(nowUtcMs);
    if (!demo.ok) throw new Error(JSON.stringify(demo.problems));
    const weighed = weigh(demo.value);
    plan = planFrom(weighed, demo.value);
    notes = weighed.notes;
  });

  const withAction = (action: Action) => plan.pots.flatMap(deedsOf).filter((deed) => deed.action === action);

  it("asks for something of every kind, each with what the grower needs to do it", () => {
    const water = withAction("water");
    expect(water.length).toBeGreaterThan(0);
    expect(water.every(({ amountMl = 0 }) => amountMl > 0)).toBe(true);
    const dry = withAction("keep-dry");
    expect(dry.length).toBeGreaterThan(0);
    expect(dry.every(({ until }) => until !== undefined)).toBe(true);
    for (const action of ["carry-in", "carry-out"] as const) {
      const carries = withAction(action);
      expect(carries.length).toBeGreaterThan(0);
      expect(
        carries.every(({ toSpotId, by, from }) => toSpotId !== undefined && (by ?? from) !== undefined),
      ).toBe(true);
    }
    expect(plan.pots.some(({ action }) => action === "none")).toBe(true);
  });

  it("rests on a diary that fits its weather: nothing is left out and no observation is doubted", () => {
    expect(notes).toEqual([]);
  });

  it("gives a reason in numbers for every deed", () => {
    for (const row of plan.pots) {
      for (const { reason } of deedsOf(row)) {
        expect([row.potId, reason.code, Object.keys(reason.numbers).length > 0]).toEqual([
          row.potId,
          reason.code,
          true,
        ]);
      }
    }
  });

  it("takes only the pots that were planted in the last weeks for freshly planted", () => {
    const fresh = plan.pots.filter((row) =>
      deedsOf(row).some(({ reason }) => reason.code === "freshly-planted-dry"),
    );
    expect(fresh.map(({ potId }) => potId).sort()).toEqual([
      "desert-rose-cut",
      "frangipani-cut",
      "jade-cuttings",
    ]);
  });

  it("keeps the grower out of the thunder, and has the fresh cuts in before the rain", () => {
    const thunder = plan.days.flatMap(({ thunderHours }) => thunderHours).map((hour) => Date.parse(hour));
    expect(thunder.length).toBeGreaterThanOrEqual(3);
    for (const row of plan.pots.filter(({ spotId }) => outdoors.has(spotId))) {
      for (const { action, from, by } of deedsOf(row)) {
        if (from === undefined && by === undefined) continue;
        const begin = from === undefined ? nowUtcMs : Date.parse(from);
        const end = by === undefined ? begin : Date.parse(by);
        const struck = thunder.filter((hour) => hour < end && hour + HOUR_MS > begin);
        expect([row.potId, action, from, by, struck]).toEqual([row.potId, action, from, by, []]);
      }
    }
    for (const potId of ["frangipani-cut", "desert-rose-cut"]) {
      const carry = plan.pots
        .filter((row) => row.potId === potId)
        .flatMap(deedsOf)
        .find(({ action }) => action === "carry-in");
      expect([potId, Date.parse(carry?.by ?? "") <= Math.min(...thunder)]).toEqual([potId, true]);
    }
  });
});
