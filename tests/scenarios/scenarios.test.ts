import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Plan } from "../../core/plan/plan.ts";
import { CHANGES } from "../../service/about/changes.ts";
import { AFTER_PLANTING } from "./after-planting.scenarios.ts";
import { objections } from "./judge.ts";
import { OTHER } from "./other.scenarios.ts";
import { caseOf, planOf, type Scenario } from "./scenario.ts";
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

const told = new Map<Scenario, string>();

/** What a grower would do by a plan: deeds and why, without amounts and hours. */
function inShort(plan: Plan): string {
  const rows = plan.pots.map(({ potId, then, ...first }) => {
    const deeds = [first, ...then].map(({ action, reason, toSpotId = "" }) =>
      `${action} ${reason.code} ${toSpotId}`.trim(),
    );
    return `- ${potId}: ${deeds.join("; ")}`;
  });
  return rows.join("\n");
}

it("holds sixty mornings and more, each told once", () => {
  const all = Object.values(TABLES).flat();
  expect(all.length).toBeGreaterThanOrEqual(60);
  expect(new Set(all.map(({ why, situation }) => `${situation}: ${why}`)).size).toBe(all.length);
});

describe.each(Object.entries(TABLES))("%s", (_, scenarios) => {
  it.each(scenarios.map((scenario) => [`${scenario.situation}: ${scenario.why}`, scenario] as const))(
    "%s",
    (_name, scenario) => {
      const plan = planOf(caseOf(scenario));
      told.set(scenario, inShort(plan));
      expect(objections(scenario, plan)).toEqual([]);
    },
  );
});

const KEPT = join(import.meta.dirname, "told.txt");

/** What was told when the list of changes was last added to; `-u` keeps what is told now, once a line says so. */
it("advice does not change without a line in service/about/changes.ts", async () => {
  const scenarios = Object.values(TABLES).flat();
  // Some were picked by name: the others were not planned.
  if (!scenarios.every((scenario) => told.has(scenario))) return;
  const lines = JSON.stringify(CHANGES.map(({ version, advice }) => [version, advice]));
  const said = `advice lines ${digest(lines)}`;
  const mornings = scenarios.map(
    (scenario) =>
      [`# ${scenario.situation} (${digest(JSON.stringify(scenario))})`, told.get(scenario)!] as const,
  );
  const kept = existsSync(KEPT) ? readFileSync(KEPT, "utf8") : "";
  const changed = mornings.filter(
    ([title, rows]) => kept.includes(`${title}\n`) && !kept.includes(`${title}\n${rows}\n`),
  );
  if (kept.startsWith(`${said}\n\n`)) {
    expect(
      changed,
      "told otherwise than before: say how and why in service/about/changes.ts, then accept with -u",
    ).toEqual([]);
  }
  const now = `${said}\n\n${mornings.map(([title, rows]) => `${title}\n${rows}\n`).join("\n")}`;
  await expect(now).toMatchFileSnapshot(KEPT);
});

/** Of a morning too, so that one that is itself told otherwise counts as new. */
function digest(text: string): string {
  return createHash("sha256").update(text).digest("hex").slice(0, 12);
}
