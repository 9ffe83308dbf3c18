import { describe, expect, it } from "vitest";
import type { PotOutlook, PotPlan } from "../../../core/plan/pot-plan.ts";
import { comingWater } from "../../../service/brief/coming-water.ts";
import { caseOf, planOf } from "../../scenarios/scenario.ts";
import type { PotStory } from "../../scenarios/scenario-pots.ts";
import { HOT, MILD, settled } from "../../scenarios/skies.ts";
import { day, deed, flat, outlook, plan, potPlan } from "./plan-builder.ts";

const DAYS = ["2027-05-12", "2027-05-13", "2027-05-14", "2027-05-15", "2027-05-16"].map(day);

/** Days from today on which one pot is listed, and where. */
function listed(pot: PotPlan) {
  const [first] = plan().days;
  const week = plan({ pots: [pot], days: DAYS.map((day) => ({ ...first!, day })) });
  return [...comingWater(week).values()].flatMap((waters, d) => waters.map(({ spotId }) => ({ d, spotId })));
}

/** Half full and down to its refill point by the day after tomorrow, a tenth lost each day. */
const drying: PotOutlook = {
  ...outlook,
  nowFrac: flat(0.5),
  refillFrac: 0.3,
  byDayFrac: [0.4, 0.35, 0.25, 0.2, 0.15].map(flat),
  reachesRefillShareFrac: [0, 0.1, 0.9, 1, 1],
  daysToRefill: flat(2),
};

describe("water of coming days", () => {
  it("is listed on the day on which a pot is first due, and where it stands by then", () => {
    expect(listed(potPlan("fig", { outlook: drying }))).toEqual([{ d: 2, spotId: "rail" }]);
    const carry = deed({ action: "carry-in", toSpotId: "shed", by: "2027-05-13T12:00Z" });
    // biome-ignore lint/suspicious/noThenProperty: the plan's own name for later deeds
    const carried = potPlan("fig", { outlook: drying, then: [carry] });
    expect(listed(carried)).toEqual([{ d: 2, spotId: "shed" }]);
  });

  it("is listed for a pot that is watered today when it is due again, also where another deed comes first", () => {
    const again = { ...drying, againDays: flat(1.5) };
    expect(listed(potPlan("fig", { action: "water", outlook: again })).map(({ d }) => d)).toEqual([1, 3]);
    const then = [deed({ action: "water" })];
    const shaded = potPlan("fig", { action: "shade", then, outlook: again });
    expect(listed(shaded).map(({ d }) => d)).toEqual([1, 3]);
    expect(listed(potPlan("fig", { action: "water", outlook: { ...again, againDays: null } }))).toEqual([]);
  });

  it("is not listed for a pot that is kept dry, nor so soon again after rain", () => {
    expect(listed(potPlan("fig", { action: "keep-dry", outlook: drying }))).toEqual([]);
    const rained = { ...drying, againDays: flat(1.2), byDayFrac: [0.4, 0.3, 0.9, 0.9, 0.9].map(flat) };
    const afterRain = listed(potPlan("fig", { action: "water", outlook: rained })).map(({ d }) => d);
    expect(afterRain[0]).toBe(1);
    expect(afterRain[1]).toBeGreaterThan(3);
    const inDry = { ...rained, byDayFrac: [0.4, 0.3, 0.28, 0.27, 0.26].map(flat) };
    expect(listed(potPlan("fig", { action: "water", outlook: inDry }))[1]!.d).toBeLessThan(4);
  });
});

/** Common practice: a small pot of a thirsty plant wants water nearly daily in a heat wave, a big olive in mild days does not. */
describe("the week of somebody who looks after pots", () => {
  const days = (sky: Parameters<typeof settled>[0], story: PotStory) => {
    const made = planOf(caseOf({ situation: "", why: "", sky: settled(sky), pots: [story], expected: {} }));
    return [...comingWater(made).values()].filter((waters) => waters.length > 0).length;
  };

  it("has a hibiscus watered on most days of a heat wave, also after its water of today", () => {
    const thirsty = { id: "hibiscus", group: "hibiscus", rimCm: 18, canopyCm: 35 } as const;
    expect(days(HOT, { ...thirsty, wateredDaysAgo: [3, 2, 1] })).toBeGreaterThanOrEqual(4);
    expect(days(HOT, { ...thirsty, wateredDaysAgo: [1, 0.5] })).toBeGreaterThanOrEqual(4);
  });

  it("has an olive watered once at most in mild days", () => {
    expect(days(MILD, { id: "olive", group: "olive", rimCm: 36, wateredDaysAgo: [2] })).toBeLessThanOrEqual(
      1,
    );
  });
});
