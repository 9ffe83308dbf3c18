import { describe, expect, it } from "vitest";
import { MINUTES_PER_TRIP } from "../../../../core/plan/choice/trouble.ts";
import { planFrom } from "../../../../core/plan/make-plan.ts";
import { weigh } from "../../../../core/plan/weigh.ts";
import { caseOf, deedsOf, type Scenario } from "../../../scenarios/scenario.ts";
import { SPOTS } from "../../../scenarios/scenario-pots.ts";
import { settled, WARM } from "../../../scenarios/skies.ts";

const FROSTY = { minC: -2, maxC: 8, cloudFrac: 0, windMPerS: 0.8 };

/** Chosen by us: 2.5 minutes for a trip of 10 kg over level ground, the unit in which trouble is weighed against harm. */
describe("the time of a deed", () => {
  const made = (pots: Scenario["pots"], sky: Scenario["sky"], spots = SPOTS) => {
    const input = caseOf({ situation: "", why: "", expected: {}, sky, pots, spots });
    const weighed = weigh(input);
    return { weighed, plan: planFrom(weighed, input) };
  };

  /** A frost between warm days: in before it and out after, up stairs and down again. */
  it.each(["same-level", "stairs"] as const)("of a carry is the trouble that was weighed: %s", (carry) => {
    const { weighed, plan } = made(
      [{ id: "rose", group: "desert-rose", rimCm: 18, wateredDaysAgo: [9] }],
      { past: WARM, ahead: [WARM, FROSTY, WARM] },
      SPOTS.map((spot) => (spot.id === "bench" ? spot : { ...spot, carry })),
    );
    const carries = deedsOf(plan, "rose").filter(({ action }) => action.startsWith("carry"));
    expect(carries.map(({ action }) => action)).toEqual(["carry-in", "carry-out"]);
    const { trips } = weighed.places.get("rose")!.chosen!;
    // Told in tenths of a minute.
    for (const { minutes } of carries)
      expect(Math.abs(minutes! - (trips / 2) * MINUTES_PER_TRIP)).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it("of the can grows with the water, and a pot that needs nothing takes none", () => {
    const pots: Scenario["pots"] = [
      { id: "small", group: "citrus", rimCm: 14, wateredDaysAgo: [9] },
      { id: "large", group: "citrus", rimCm: 34, wateredDaysAgo: [25] },
      { id: "cactus", group: "cactus-desert", wateredDaysAgo: [1] },
    ];
    const { plan } = made(pots, settled(WARM));
    const water = (potId: string) => deedsOf(plan, potId).find(({ amountMl }) => amountMl !== undefined)!;
    expect(water("large").minutes).toBeGreaterThan(water("small").minutes!);
    expect(deedsOf(plan, "cactus").some(({ minutes }) => minutes !== undefined)).toBe(false);
  });
});
