import { describe, expect, it } from "vitest";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { daysToNeed, needText, nextNeed } from "../../../service/pages/pots/next-need.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { day, deed, flat, outlook, potPlan } from "../brief/plan-builder.ts";

const words = wordsFor("en-GB", "metric");
/** A Wednesday. */
const plan = { zone: "Europe/Lisbon", forDay: day("2027-05-12") };
const dryIn = (midDays: number | null): PotPlan["outlook"] => ({
  ...outlook,
  daysToRefill: midDays === null ? null : flat(midDays),
});
const carryIn = (by: string) => deed({ action: "carry-in", by });
const readOf = (over: Partial<PotPlan>, ...later: PotPlan["then"]) => {
  // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
  const need = nextNeed(potPlan("fig", { ...over, then: later }), plan);
  return [needText(need, words), daysToNeed(need)];
};

describe("what a pot asks for next", () => {
  it("is today's carry, though the pot is to be kept dry as well", () => {
    const dry = { action: "keep-dry", outlook: dryIn(0.5) } as const;
    expect(readOf(dry, carryIn("2027-05-12T19:00Z"))).toEqual(["to go under cover", 0]);
    expect(readOf(dry, carryIn("2027-05-14T19:00Z"))).toEqual(["to be kept dry", 2]);
    expect(readOf(dry)).toEqual(["to be kept dry", Number.POSITIVE_INFINITY]);
  });

  it("is the deed of the nearest day, by name, unless water comes before it", () => {
    const later = [deed({ action: "carry-out", from: "2027-05-16T06:00Z" }), carryIn("2027-05-14T19:00Z")];
    expect(readOf({ action: "none", outlook: dryIn(6) }, ...later)).toEqual(["to go under cover, Fri", 2]);
    expect(readOf({ action: "none", outlook: dryIn(1.6) }, ...later)).toEqual(["water in a day", 1.6]);
  });

  it("is water in whole days as the brief counts them, or nothing", () => {
    expect(readOf({ action: "none", outlook: dryIn(0.9) })).toEqual(["water soon", 0.9]);
    // Dry, and left for a reason: it rests, rain will do, it stands it.
    expect(readOf({ action: "none", outlook: dryIn(0) })[0]).toBe("nothing in sight");
    expect(readOf({ action: "none", outlook: { ...dryIn(3), restingShareFrac: 0.8 } })[0]).toBe(
      "nothing in sight",
    );
    expect(readOf({ action: "none", outlook: dryIn(null) })).toEqual([
      "nothing in sight",
      Number.POSITIVE_INFINITY,
    ]);
  });
});
