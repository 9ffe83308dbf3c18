import { beforeAll, describe, expect, it } from "vitest";
import { plan } from "../../../../core/plan/make-plan.ts";
import type { Plan } from "../../../../core/plan/plan.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { caseOf } from "../../../scenarios/scenario.ts";
import { after, COLD, GALE, SCORCHING, WARM } from "../../../scenarios/skies.ts";

/** Rain on the second afternoon, scorching on the third day, a gale on the fourth, then cold. */
const RAINY = { ...WARM, cloudFrac: 1, rain: { mm: 30, from: 14, hours: 6 } };
let made: Plan;
beforeAll(() => {
  made = plan(
    caseOf({
      situation: "",
      why: "",
      expected: {},
      sky: after(WARM, WARM, RAINY, SCORCHING, GALE, COLD),
      pots: [{ id: "rose", group: "desert-rose", wateredDaysAgo: [1] }],
    }),
  );
});

describe("the sky ahead of a plan", () => {
  it("names its spells in the order in which they begin, each with the line that it passes", () => {
    const spells = made.spells ?? [];
    expect(spells.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["wet", "hot", "gusts", "cold"]));
    expect([...spells].sort((a, b) => (a.from < b.from ? -1 : 1))).toEqual(spells);
    const wet = spells.find(({ kind }) => kind === "wet")!;
    expect(wet.from.slice(0, 10)).toBe("2031-07-16");
    expect(Number(wet.from.slice(11, 13))).toBeGreaterThanOrEqual(12);
    const cold = spells.find(({ kind }) => kind === "cold")!;
    // A desert rose is hurt below 4.4 °C. [the damage line of its group, from a university's grower advice]
    expect(cold.numbers.limitC).toBe(4.4);
    expect(cold.from >= "2031-07-18").toBe(true);
  });

  it("begins a day in water a day before the hours for potting, where there is still a day", () => {
    for (const { from, prepareFrom } of made.workWindows) {
      const dayBefore = Date.parse(from) - 24 * HOUR_MS;
      if (dayBefore < Date.parse(made.issuedAt)) expect(prepareFrom).toBeUndefined();
      else expect(Date.parse(prepareFrom!)).toBe(dayBefore);
    }
    expect(made.workWindows.some(({ prepareFrom }) => prepareFrom !== undefined)).toBe(true);
  });

  it("sends nobody to the potting bench in the heat, and counts no dry day after where the same day rains", () => {
    for (const { hottestHeatIndexC } of made.workWindows) expect(hottestHeatIndexC).toBeLessThan(32.2);
    const rainyMorning = made.workWindows.find(({ from }) => from.startsWith("2031-07-16"));
    expect(rainyMorning?.dryDaysAfter).toBe(0);
  });

  it("tells what the pots of a spot weigh, more when soaked", () => {
    const { loadKg } = made.spots.find(({ spotId }) => spotId === "bench")!;
    const { massKg } = made.pots[0]!.outlook;
    expect(Math.abs(loadKg!.now - massKg)).toBeLessThanOrEqual(0.5);
    expect(loadKg!.soaked).toBeGreaterThan(loadKg!.now);
  });
});
