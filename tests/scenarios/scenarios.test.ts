import { describe, expect, it } from "vitest";
import { AFTER_PLANTING } from "./after-planting.scenarios.ts";
import { objections } from "./judge.ts";
import { OTHER } from "./other.scenarios.ts";
import { caseOf, planOf } from "./scenario.ts";
import { SHELTER } from "./shelter.scenarios.ts";
import { THOUGHTFUL } from "./thoughtful.scenarios.ts";
import { WATERING } from "./watering.scenarios.ts";

/**
 * Mornings as a gardener would tell them, and what a good one would do: rules of the trade, common practice, not
 * numbers. Each goes the way of `leebench plan`.
 */
const TABLES = {
  watering: WATERING,
  "after planting": AFTER_PLANTING,
  shelter: SHELTER,
  other: OTHER,
  thoughtful: THOUGHTFUL,
};

it("holds sixty mornings and more, each told once", () => {
  const all = Object.values(TABLES).flat();
  expect(all.length).toBeGreaterThanOrEqual(60);
  expect(new Set(all.map(({ why, situation }) => `${situation}: ${why}`)).size).toBe(all.length);
});

describe.each(Object.entries(TABLES))("%s", (_, scenarios) => {
  it.each(scenarios.map((scenario) => [`${scenario.situation}: ${scenario.why}`, scenario] as const))(
    "%s",
    (_name, scenario) => {
      expect(objections(scenario, planOf(caseOf(scenario)))).toEqual([]);
    },
  );
});
