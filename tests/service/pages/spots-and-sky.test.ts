import { describe, expect, it } from "vitest";
import type { Plan, SpotPlan } from "../../../core/plan/plan.ts";
import { collection, deed, flat, plan, potPlan, spot } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const porch = spot("porch", { name: "Porch", kind: "roofed", room: { places: 9 } });
const nine: SpotPlan = {
  spotId: "porch",
  potCount: 2,
  placesLeft: 7,
  rainByDayMm: [flat(0), flat(0)],
  coldestByDayC: [flat(11)],
};

function houseWith(over: Partial<Plan>) {
  const made = plan({ spots: [nine], ...over });
  return houseOf({ collection: { ...collection, spots: [...collection.spots, porch] }, plan: made });
}

describe("a spot with counted places", () => {
  it("says how many are free now, and how many pots the plan brings to them", async () => {
    const carry = deed({ action: "carry-in", toSpotId: "porch" });
    const house = await houseWith({
      pots: [
        potPlan(collection.pots[0]!.id, { ...carry, count: 4 }),
        potPlan("later", { ...carry, count: 1 }),
        potPlan("leaves", { ...deed({ action: "carry-out", toSpotId: "wall" }), count: 2 }),
      ],
    });
    expect((await house.get("/spots")).text).toContain(
      "2 pots stand here, 7 places are free. The plan brings 5 pots here in the coming days.",
    );
  });
});

describe("the nights of a spot", () => {
  it("are left out of the last day where their morning is not known", async () => {
    const { status, text } = await (await houseWith({})).get("/sky");
    expect(status).toBe(200);
    expect(text).toContain("0 mm, 11 °C");
  });
});
