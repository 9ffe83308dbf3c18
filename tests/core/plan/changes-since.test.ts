import { describe, expect, it } from "vitest";
import { changesSince } from "../../../core/plan/changes-since.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { deed, plan, potPlan } from "../../service/brief/plan-builder.ts";

const carry = (from?: string) => deed({ action: "carry-in", toSpotId: "shed", ...(from ? { from } : {}) });
const watered = (...further: ReturnType<typeof deed>[]): PotPlan =>
  // biome-ignore lint/suspicious/noThenProperty: the plan's own name for further deeds
  potPlan("lemon", { action: "water", then: further });
const between = (was: PotPlan, is: PotPlan) =>
  changesSince(plan({ pots: [was] }), { rows: [is], journal: [], forDay: "2027-05-12" });

describe("what changed since the last plan", () => {
  it("is told by the first deed where that differs", () => {
    expect(between(potPlan("lemon"), watered())).toEqual([
      { potId: "lemon", was: "none", is: "water", because: "weather" },
    ]);
  });

  it("is told too where a further deed of the day comes or goes behind the same first one", () => {
    expect(between(watered(), watered(carry()))).toMatchObject([{ was: "water", is: "carry-in" }]);
    expect(between(watered(carry()), watered())).toMatchObject([{ was: "carry-in", is: "water" }]);
  });

  it("is not told for a deed of a later day, nor where nothing differs", () => {
    expect(between(watered(), watered(carry("2027-05-14T06:00Z")))).toEqual([]);
    expect(between(watered(carry()), watered(carry()))).toEqual([]);
  });
});
