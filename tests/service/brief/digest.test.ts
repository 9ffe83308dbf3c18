import { describe, expect, it } from "vitest";
import { briefOf } from "../../../service/brief/brief.ts";
import { briefText } from "../../../service/brief/brief-text.ts";
import { weeklyOf, weeklyText } from "../../../service/brief/weekly.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { collection, outlook, plan, pot, potPlan, spot } from "./plan-builder.ts";

const words = wordsFor("en", "metric");
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const BY_NINE = "2027-05-12T07:00Z";

const bench = (ids: readonly string[]) => ({
  ...collection,
  spots: [...collection.spots, spot("north", { name: "North bench", walkOrder: 0 })],
  pots: [...collection.pots, ...ids.map((id) => pot(id, { name: id.toUpperCase(), firstSpotId: "north" }))],
});

const watered = (id: string, amountMl: number) =>
  potPlan(id, {
    action: "water",
    spotId: "north",
    amountMl,
    by: BY_NINE,
    reason: { code: "at-refill-point", numbers: { leftFrac: 0.3, refillFrac: 0.35 } },
  });

const briefOfBench = (ids: readonly string[]) =>
  briefOf({
    plan: plan({ pots: ids.map((id, index) => watered(id, 200 + 100 * index)) }),
    collection: bench(ids),
    words,
  });

describe("a long list", () => {
  it("tells deeds that are alike as one, with each pot's own amount below", () => {
    const [group, ...others] = briefOfBench(["a", "b", "c", "d"]).stops[0]?.groups ?? [];
    expect(others).toEqual([]);
    expect(group).toMatchObject({
      sentence: "Water: 4 pots, by 09:00.",
      reason: "It has come down to its refill point.",
    });
    expect(group?.items.map(plain)).toEqual(["A, 200 ml", "B, 300 ml", "C, 400 ml", "D, 500 ml"]);
  });

  it("leaves three as they are, each with its figures", () => {
    const groups = briefOfBench(["a", "b", "c"]).stops[0]?.groups ?? [];
    expect(groups.map(({ items }) => items.length)).toEqual([0, 0, 0]);
    expect(groups[0]?.reason).toBe("30% of its water is left; it waits for more at 35%.");
  });

  it("loses no deed, whatever is told as one", () => {
    const ids = ["a", "b", "c", "d", "e", "f"];
    const [stop] = briefOfBench(ids).stops;
    expect(stop?.groups.flatMap(({ deeds }) => deeds.map(({ potId }) => potId)).sort()).toEqual(ids);
  });
});

it("has a headline that counts pots by deed, what is due first at its head", () => {
  expect(briefOf({ plan: plan(), collection, words }).headline).toBe(
    "Water: 3, by 09:00; Carry under cover: 1, by 13:00",
  );
});

describe("nothing urgent reads as urgent", () => {
  const thunder = (from: string, to: string) =>
    briefOf({
      plan: plan({ cautions: [{ code: "thunder", potIds: [], from, to, numbers: {} }] }),
      collection,
      words,
    }).cautions.lines[0]?.isUrgent;

  it("thunder of today is urgent, of a later day it is not", () => {
    expect(thunder("2027-05-12T13:00Z", "2027-05-12T15:00Z")).toBe(true);
    expect(thunder("2027-05-14T13:00Z", "2027-05-14T15:00Z")).toBe(false);
  });
});

describe("an empty morning", () => {
  const empty = (over = {}) =>
    briefOf({
      plan: plan({ pots: [potPlan("fig"), potPlan("aloe")], cautions: [], changesSince: [] }),
      collection,
      words,
      ...over,
    });

  it("is one line", () => {
    expect(empty().emptyLine).toBe("Wednesday 12 May at Low Quay: None of the 2 pots needs anything today.");
  });

  it("names the pots that are kept dry", () => {
    const kept = plan({ pots: [potPlan("fig"), potPlan("aloe", { action: "keep-dry" })], cautions: [] });
    expect(briefOf({ plan: kept, collection, words }).emptyLine).toContain("One pot is kept dry.");
  });

  it("is told in full when the morning before was missed, or thunder is near", () => {
    const timing = { lateUtcMs: null, dueUtcMs: 0, missedDays: ["2027-05-11" as never] };
    expect(empty({ timing }).emptyLine).toBeNull();
    expect(briefOf({ plan: plan(), collection, words }).emptyLine).toBeNull();
    expect(briefText(empty({ timing }))).toContain("There was no brief on Tuesday 11 May.");
  });
});

it("tells the week day by day: sky, deeds, waterings to come and dry times that end", () => {
  const pots = [
    potPlan("fig", {
      outlook: {
        ...outlook,
        reachesRefillShareFrac: [0, 0.8],
        byDayFrac: [outlook.nowFrac, { low: 0.2, mid: 0.3, high: 0.4 }],
      },
    }),
    potPlan("plumeria", { action: "keep-dry", outlook: { ...outlook, dryUntil: "2027-05-14" as never } }),
  ];
  const text = plain(weeklyText(weeklyOf({ plan: plan({ pots }), collection, words })));
  expect(text).toContain("The week from Wednesday 12 May, Low Quay");
  expect(text).toContain("Friday 14 May: 8 °C to 21 °C, dry, gusts to 22 km/h.");
  expect(text).toContain("- Water at South rail: Fig 1.7 l.");
  expect(text).toContain("- Dry time ends: Plumeria.");
  expect(text).toContain("Weather by the invented office");
});
