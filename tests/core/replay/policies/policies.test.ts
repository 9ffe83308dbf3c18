import { describe, expect, it } from "vitest";
import { checkbook } from "../../../../core/replay/policies/checkbook.ts";
import { finger } from "../../../../core/replay/policies/finger.ts";
import { fixedDays } from "../../../../core/replay/policies/fixed-days.ts";
import type { MorningView, Policy } from "../../../../core/replay/policies/policy.ts";
import { tradeRules } from "../../../../core/replay/policies/trade-rules.ts";
import { wetMonths } from "../../../../core/replay/policies/wet-months.ts";
import type { CalendarDay } from "../../../../core/site/site.ts";
import { PORCH, ROOM, STAGE, someMorning, somePot, YARD } from "./some-view.ts";

const first = (policy: Policy, view: MorningView) => policy.begin(STAGE).morning(view)[0]!;
const THROUGH = Number.POSITIVE_INFINITY;
const RAIN = { rainMm: [4, 3, 0, 0] };
const WINTER = { date: "2014-01-10" as CalendarDay, month: 0 };

describe("fixed days", () => {
  it("water leafy plants every second day in summer and every seventh in winter", () => {
    const pot = somePot("citrus", { sinceWaterDays: 2 });
    expect(first(fixedDays({ skips: false }), someMorning([pot])).pourMl).toBe(THROUGH);
    expect(first(fixedDays({ skips: false }), someMorning([pot], WINTER)).pourMl).toBe(0);
  });

  it("leave the can before rain only if they skip, and only in the open", () => {
    const pot = somePot("citrus", { sinceWaterDays: 9 });
    const view = someMorning([pot], { outlook: RAIN });
    expect(first(fixedDays({ skips: false }), view).pourMl).toBe(THROUGH);
    expect(first(fixedDays({ skips: true }), view).pourMl).toBe(0);
    const inside = someMorning([{ ...pot, spot: ROOM }], { outlook: RAIN });
    expect(first(fixedDays({ skips: true }), inside).pourMl).toBe(THROUGH);
  });

  it("bring tender plants in by the calendar and out again", () => {
    expect(first(fixedDays({ skips: false }), someMorning([somePot("desert-rose")], WINTER)).toSpot).toBe(
      ROOM,
    );
    const inside = somePot("desert-rose", { spot: ROOM });
    expect(first(fixedDays({ skips: false }), someMorning([inside])).toSpot).toBe(YARD);
    expect(first(fixedDays({ skips: false }), someMorning([inside], WINTER)).toSpot).toBeNull();
  });
});

describe("dry to the finger", () => {
  it("waters leafy plants at three centimetres and those that store water at six", () => {
    const dry = { dryToCm: () => 3 };
    expect(first(finger, someMorning([somePot("citrus", dry)])).pourMl).toBe(THROUGH);
    expect(first(finger, someMorning([somePot("cactus-desert", dry)])).pourMl).toBe(0);
    expect(first(finger, someMorning([somePot("cactus-desert", { dryToCm: () => 6 })])).pourMl).toBe(THROUGH);
  });

  it("waits for fresh cuts to close", () => {
    const fresh = { dryToCm: () => 6, roots: "worked-on", sincePlantedDays: 3 } as const;
    expect(first(finger, someMorning([somePot("cactus-desert", fresh)])).pourMl).toBe(0);
    expect(
      first(finger, someMorning([somePot("cactus-desert", { ...fresh, sincePlantedDays: 8 })])).pourMl,
    ).toBe(THROUGH);
  });
});

describe("the checkbook", () => {
  it("fills the bucket when days of demand have emptied its ready part, and begins anew", () => {
    const run = checkbook.begin(STAGE);
    const pot = somePot("aloe-summer");
    const deeds = Array.from({ length: 12 }, () => run.morning(someMorning([pot]))[0]!.pourMl);
    const due = deeds.indexOf(THROUGH);
    expect(due).toBeGreaterThanOrEqual(0);
    expect(deeds[due + 1]).toBe(0);
    expect(deeds.filter((ml) => ml > 0).length).toBeGreaterThan(1);
  });

  it("is credited with rain and defers to rain that is forecast", () => {
    const pours = (outlook: Partial<MorningView["outlook"]>) => {
      const run = checkbook.begin(STAGE);
      const view = someMorning([somePot("hibiscus")], { outlook });
      return Array.from({ length: 12 }, () => run.morning(view)[0]!.pourMl).filter((ml) => ml > 0).length;
    };
    expect(pours({ yesterday: { rainMm: 30, et0Mm: 5 } })).toBe(0);
    expect(pours({ rainMm: [60, 20, 0, 0] })).toBe(0);
  });
});

describe("under cover in wet months", () => {
  it("keeps hardy plants under the roof while more rain falls than evaporates", () => {
    const spring = { date: "2014-04-20" as CalendarDay, month: 3 };
    const autumn = { date: "2014-11-20" as CalendarDay, month: 10 };
    expect(first(wetMonths, someMorning([somePot("citrus", { spot: YARD })], autumn)).toSpot).not.toBeNull();
    expect(first(wetMonths, someMorning([somePot("citrus", { spot: PORCH })])).toSpot).toBe(YARD);
    expect([YARD, PORCH, null]).toContain(first(wetMonths, someMorning([somePot("citrus")], spring)).toSpot);
  });
});

describe("trade rules", () => {
  it("carry in before a night near the line of damage and out when three nights look safe", () => {
    const cold = { coldestC: [6, 9, 9, 9] };
    expect(first(tradeRules, someMorning([somePot("desert-rose")], { outlook: cold })).toSpot).toBe(ROOM);
    const inside = somePot("desert-rose", { spot: ROOM });
    expect(
      first(tradeRules, someMorning([inside], { outlook: { coldestC: [9, 8, 9, 9] } })).toSpot,
    ).toBeNull();
    expect(first(tradeRules, someMorning([inside])).toSpot).toBe(YARD);
  });

  it("water a light pot, but not before likely rain nor before cold nights", () => {
    const light = somePot("desert-rose", { feel: () => "light", sinceWaterDays: 9 });
    expect(first(tradeRules, someMorning([light], { outlook: { coldestC: [17, 17, 17, 17] } })).pourMl).toBe(
      THROUGH,
    );
    const wet = { coldestC: [17, 17, 17, 17], rainMm: [8, 0, 0, 0], wetShareFrac: [0.8, 0, 0, 0] };
    expect(first(tradeRules, someMorning([light], { outlook: wet })).pourMl).toBe(0);
    expect(first(tradeRules, someMorning([light], { outlook: { coldestC: [9, 9, 9, 9] } })).pourMl).toBe(0);
  });

  it("keep fresh cuts dry and out of the rain", () => {
    const fresh = somePot("desert-rose", { feel: () => "light", roots: "worked-on", sincePlantedDays: 2 });
    const deed = first(
      tradeRules,
      someMorning([fresh], { outlook: { rainMm: [3, 0, 0, 0], wetShareFrac: [0.3, 0, 0, 0] } }),
    );
    expect(deed).toMatchObject({ pourMl: 0, toSpot: PORCH });
  });
});
