import { describe, expect, it } from "vitest";
import { bestCourse } from "../../../../core/replay/bound/best-course.ts";
import { finger } from "../../../../core/replay/policies/finger.ts";
import { fixedDays } from "../../../../core/replay/policies/fixed-days.ts";
import { tradeRules } from "../../../../core/replay/policies/trade-rules.ts";
import { firstState } from "../../../../core/replay/season/first-state.ts";
import { playSeason } from "../../../../core/replay/season/play-season.ts";
import { costOf } from "../../../../core/replay/season/season-result.ts";
import { springWorld } from "../some-world.ts";

const GROUPS = ["desert-rose", "cactus-desert", "pelargonium", "hibiscus"];
const season = springWorld({ groupIds: GROUPS, days: 60 }).seasonOf(2013);
const bound = (fineness: number) =>
  season.pots.map((pot) => bestCourse(season, { pot, first: firstState(season, pot), fineness }));

describe("the best that could have been done", () => {
  const usual = bound(0.5);

  it("is better than every way of people, for every pot", () => {
    for (const policy of [fixedDays({ skips: false }), finger, tradeRules]) {
      const { pots } = playSeason(season, policy);
      for (const [i, played] of pots.entries()) {
        expect(usual[i]!.cost).toBeLessThanOrEqual(costOf(played) + 1e-9);
      }
    }
  });

  it("changes by less than a hundredth of a plant when its cells are halved", () => {
    for (const [i, finer] of bound(1).entries()) {
      expect(Math.abs(finer.cost - usual[i]!.cost)).toBeLessThan(0.01);
    }
  });

  it("tells its harm, its trouble and both", () => {
    for (const { cost, harm, trouble } of usual) {
      expect(cost).toBeCloseTo(harm + trouble, 12);
      expect(trouble).toBeGreaterThan(0);
    }
  });
});
