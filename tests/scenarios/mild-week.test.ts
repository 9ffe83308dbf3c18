import { describe, expect, it } from "vitest";
import type { Action } from "../../core/plan/deed.ts";
import { type PlanInput, plan } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { GROUPS } from "../../core/plant/groups.ts";
import { caseOf, deedsOf } from "./scenario.ts";
import type { PotStory } from "./scenario-pots.ts";
import { settled } from "./skies.ts";

/**
 * Sixty pots of every group and of sizes from 16 to 35 cm through mild settled weather: a pot that needs nothing gets
 * nothing. Common practice; what is counted is how many pots a brief mentions.
 */
const GENTLE = { minC: 17, maxC: 26, cloudFrac: 0.3 };
const POT_COUNT = 60;
const ONE_IN_TEN = POT_COUNT / 10;
const CAN: ReadonlySet<Action> = new Set(["water", "soak-slowly"]);
type Season = "spring" | "summer" | "autumn";

const stories = (wateredDaysAgo: (i: number) => number[]): PotStory[] =>
  Array.from({ length: POT_COUNT }, (_, i) => ({
    id: `pot-${i}`,
    group: GROUPS[i % GROUPS.length]!.id,
    rimCm: 16 + ((i * 7) % 20),
    wateredDaysAgo: wateredDaysAgo(i),
  }));

const morning = (season: Season, pots: readonly PotStory[]): PlanInput =>
  caseOf({ situation: "", why: "", season, sky: settled(GENTLE), pots, expected: {} });

const mentioned = (made: Plan, counts: (action: Action) => boolean) =>
  made.pots.filter((row) => deedsOf(made, row.potId).some(({ action }) => counts(action)));

describe.each(["spring", "summer", "autumn"] as const)("a mild settled week in %s, sixty pots", (season) => {
  it("the morning after all were watered at most one pot in ten is mentioned", () => {
    const made = plan(
      morning(
        season,
        stories(() => [1]),
      ),
    );
    expect(mentioned(made, (action) => action !== "none").length).toBeLessThanOrEqual(ONE_IN_TEN);
  });

  it("day after day, watered as advised, nothing but the can is asked of more than one pot in ten", () => {
    let pots = stories((i) => [1 + (i % 5)]);
    for (let day = 0; day < 7; day++) {
      const made = plan(morning(season, pots));
      const besides = mentioned(made, (action) => action !== "none" && !CAN.has(action));
      expect(besides.length).toBeLessThanOrEqual(ONE_IN_TEN);
      const watered = new Set(mentioned(made, (action) => CAN.has(action)).map(({ potId }) => potId));
      pots = pots.map((pot) => ({
        ...pot,
        wateredDaysAgo: [
          ...(pot.wateredDaysAgo ?? []).map((ago) => ago + 1),
          ...(watered.has(pot.id) ? [1] : []),
        ].filter((ago) => ago < 27),
      }));
    }
  });
});
