import { describe, expect, it } from "vitest";
import { plan } from "../../../../core/plan/make-plan.ts";
import { caseOf } from "../../../scenarios/scenario.ts";
import { type PotStory, SPOTS } from "../../../scenarios/scenario-pots.ts";

const cold: PotStory = { id: "fig", group: "fig-bonsai", at: "bench" };
const mild = { minC: 12, maxC: 24 };

function spotsOf({ clock, places = 9 }: { clock: number; places?: number }) {
  const made = plan(
    caseOf({
      situation: "a frost comes tonight and no other night is cold",
      why: "",
      clock,
      sky: { past: mild, ahead: [mild, { minC: -4, maxC: 24 }, mild] },
      pots: [
        { ...cold, count: 4 },
        { ...cold, id: "guest", count: 2, also: [{ daysAgo: 1, body: { kind: "moved", toSpotId: "shed" } }] },
        { ...cold, id: "dweller", at: "shed", count: 3 },
      ],
      spots: SPOTS.map((spot) => (spot.id === "shed" ? { ...spot, room: { places } } : spot)),
      expected: {},
    }),
  );
  const at = (id: string) => made.spots.find(({ spotId }) => spotId === id)!;
  return { at, days: made.days };
}

describe("a spot in the plan", () => {
  it("counts every pot that stands there, guests and all, off its places", () => {
    expect(spotsOf({ clock: 18 }).at("shed")).toMatchObject({ potCount: 5, placesLeft: 4 });
    expect(spotsOf({ clock: 18, places: 4 }).at("shed").placesLeft).toBe(0);
    expect(spotsOf({ clock: 18 }).at("bench").placesLeft).toBeNull();
  });

  it.each([6, 18])("has tomorrow's frost before sunrise under today's evening, asked at %d", (clock) => {
    const { at, days } = spotsOf({ clock });
    const coldest = at("bench").coldestByDayC.map(({ mid }) => mid);
    expect(coldest[0]).toBeLessThan(0);
    expect(Math.min(...coldest.slice(1))).toBeGreaterThan(2);
    expect(coldest.length).toBeLessThanOrEqual(days.length);
    expect(coldest.every(Number.isFinite)).toBe(true);
  });
});
