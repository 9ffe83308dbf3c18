import { describe, expect, it } from "vitest";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { workLine } from "../../../service/brief/work-line.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { potPlan } from "./plan-builder.ts";

const words = wordsFor("en", "metric");
const told = (...pots: PotPlan[]) =>
  workLine(
    pots.map((potPlan) => ({ potPlan, deed: potPlan })),
    words,
  );
const lift = { massKg: 12, hands: "two-people" as const, limitKg: 10 };

describe("the morning's work", () => {
  it("is the sum over all pots of every entry, time rounded up to five minutes", () => {
    const watered = potPlan("fig", { action: "water", amountMl: 1500, minutes: 0.6, count: 4 });
    const carried = potPlan("agave", { action: "carry-in", toSpotId: "shed", minutes: 3, lift });
    expect(told(watered, carried)).toBe("Work: some 10 minutes, 6\u00a0l of water and 12\u00a0kg to carry.");
  });

  it("names neither water nor weight where there is none, and is not told where nothing takes time", () => {
    expect(told(potPlan("fig", { action: "empty-saucer", minutes: 0.2 }))).toBe("Work: some 5 minutes.");
    expect(told(potPlan("fig", { action: "keep-dry" }))).toBeNull();
  });

  it("is not pushed over five minutes by tenths that add up to just five", () => {
    expect(told(potPlan("fig", { action: "clear-hole", minutes: 0.1, count: 50 }))).toBe(
      "Work: some 5 minutes.",
    );
    const tenths = Array.from({ length: 50 }, () => potPlan("fig", { action: "clear-hole", minutes: 0.1 }));
    expect(told(...tenths)).toBe("Work: some 5 minutes.");
  });
});
