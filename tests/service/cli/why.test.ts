import { beforeAll, describe, expect, it } from "vitest";
import { type PlanInput, plan } from "../../../core/plan/make-plan.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { type Weighed, weigh } from "../../../core/plan/weigh.ts";
import { type Why, whyPot } from "../../../core/plan/why-pot.ts";
import { demoCase } from "../../../demo/demo-case.ts";
import { writeCase } from "../../../service/case/write-case.ts";
import { whyText } from "../../../service/cli/why-text.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand } from "./run-command.ts";

let input: PlanInput;
let weighed: Weighed;
let made: Plan;

beforeAll(async () => {
  const demo = await demoCase(Date.UTC(2031, 4, 4, 8));
  if (!demo.ok) throw new Error(JSON.stringify(demo.problems));
  input = demo.value;
  weighed = weigh(input);
  made = plan(input);
});

const whyOf = (potId: string): Why => {
  const found = whyPot(weighed, potId);
  if (found === null) throw new Error(`${potId} is not in the plan`);
  return found;
};

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe("the numbers behind a plan", () => {
  it("belong to the very line that the brief shows, for every pot", () => {
    expect(made.pots.length).toBeGreaterThanOrEqual(24);
    for (const row of made.pots) expect(whyOf(row.potId).row).toEqual(row);
  });

  it("add up: terms and days to harm, harm and trouble to cost", () => {
    for (const { potId } of made.pots) {
      for (const way of whyOf(potId).candidates) {
        const byTerm = sum(Object.values(way.harmByTerm).map(sum));
        expect(byTerm + way.harmEitherWay).toBeCloseTo(way.harm, 9);
        expect(way.harm + way.trouble).toBeCloseTo(way.cost, 9);
        expect(Math.abs(way.trouble)).toBeCloseTo((way.trips * input.settings.tripWorth) / 1000, 9);
      }
    }
  });

  it("show one chosen way a pot, and no cheaper one but for want of room", () => {
    for (const { potId } of made.pots) {
      const { candidates } = whyOf(potId);
      const chosen = candidates.filter((way) => way.chosen);
      const cheapest = Math.min(...candidates.map(({ cost }) => cost));
      expect([potId, chosen.length]).toEqual([potId, 1]);
      const wished = candidates.find((way) => way.wished);
      expect(wished?.cost).toBeCloseTo(cheapest, 9);
      const scarce = input.collection.spots.some(
        ({ id, room }) => id === wished?.otherSpotId && room !== undefined,
      );
      if (!scarce) expect([potId, chosen[0] === wished]).toEqual([potId, true]);
    }
  });

  it("stand under the brief's own sentences in the text", () => {
    const words = wordsFor("en-GB", "metric");
    for (const row of made.pots) {
      const text = whyText({
        why: whyOf(row.potId),
        plan: made,
        collection: input.collection,
        words,
        all: false,
      });
      for (const deed of [row, ...row.then]) {
        expect(text).toContain(deed.reason.code);
        for (const [name, value] of Object.entries(deed.reason.numbers))
          expect(text).toContain(`${name} ${value}`);
      }
      expect(text).not.toContain("undefined");
      expect(text).not.toContain("NaN");
    }
  });
});

describe("leebench why", () => {
  it("reads a case, finds a pot by name, and gives the same numbers as JSON", async () => {
    const written = JSON.stringify(writeCase(input));
    const text = await runCommand(["why", "Rail lemon", "--case"], { input: written });
    expect([text.code, text.stderr]).toEqual([0, ""]);
    expect(text.stdout).toContain("Rail lemon");
    const json = await commandHere(["why", "lemon", "--case", "--json"], { input: written });
    expect(JSON.parse(json.stdout)).toEqual(JSON.parse(JSON.stringify(whyOf("lemon"))));
  });

  it("offers the nearest pots for a slip", async () => {
    const { code, stderr } = await commandHere(["why", "lemmon", "--case"], {
      input: JSON.stringify(writeCase(input)),
    });
    expect(code).toBe(1);
    expect(problemsIn(stderr)).toEqual([
      {
        code: "unknown-pot",
        path: ["<pot>"],
        data: { given: "lemmon", nearest: expect.arrayContaining(["lemon"]) },
      },
    ]);
  });
});
