import { describe, expect, it } from "vitest";
import { briefOf } from "../../../service/brief/brief.ts";
import { briefText } from "../../../service/brief/brief-text.ts";
import { REASONS } from "../../../service/case/plan-codes.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { collection, plan, potPlan } from "./plan-builder.ts";

const words = wordsFor("en", "metric");
const brief = (over = {}) => briefOf({ plan: plan(over), collection, words });
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("a brief", () => {
  it("lists today's deeds in walking order, with verb, pot, amount, place and hour", () => {
    const { stops } = brief();
    expect(stops.map((stop) => stop.name)).toEqual(["South rail"]);
    expect(stops[0]?.deeds.map((deed) => plain(deed.sentence))).toEqual([
      "Water: Lemon (3 pots), 850 ml each, by 09:00.",
      "Carry under cover: Plumeria, to Tool shed, by 13:00.",
    ]);
  });

  it("gives each deed its reason in numbers and how sure it is", () => {
    const [water, carry] = brief().stops[0]?.deeds ?? [];
    expect(water?.reason).toBe("31% of its water is left; it waits for more at 35%.");
    expect(water?.confidence).toBe("very likely");
    expect(plain(carry?.reason ?? "")).toBe(
      "18 mm of rain would wet roots that must stay dry until Wednesday 19 May.",
    );
    expect(plain(carry?.notes[0] ?? "")).toBe("31 kg: two people.");
  });

  it("keeps what must stay dry apart from what is to be done", () => {
    expect(brief().keepDry.lines).toMatchObject([{ pot: "Plumeria", until: "until Wednesday 19 May" }]);
  });

  it("puts a deed of a later day under that day", () => {
    expect(brief().coming.lines).toMatchObject([
      {
        name: "Friday 14 May",
        deeds: ["Carry back out: Aloe, to South rail, from 09:00."],
      },
    ]);
  });

  it("counts the pots that need nothing today, though one of them does on Friday", () => {
    expect(brief().nothing).toEqual({ count: 2, sentence: "2 pots need nothing today." });
    const quiet = brief({ pots: [potPlan("fig"), potPlan("lemon", { count: 3 })] });
    expect(quiet.lead).toBe("None of the 4 pots needs anything today.");
    expect(quiet.stops).toEqual([]);
  });

  it("accounts for every pot, and names those to be looked at again in the evening", () => {
    const short = { reason: { code: "has-enough" as const, numbers: { leftDays: 0 } } };
    const pots = [
      potPlan("lemon", { count: 3, action: "water" }),
      potPlan("fig", short),
      potPlan("plumeria", { count: 2, action: "keep-dry" }),
      potPlan("aloe", { count: 4, reason: { code: "has-enough", numbers: { leftDays: 1 } } }),
    ];
    const { lead, evening, emptyLine } = brief({ pots });
    expect(lead).toBe("One thing to do, at 3 pots; 1 pot to look at; 2 kept dry; 4 need nothing today.");
    expect(evening).toBe("Look again this evening: Fig.");
    const idle = brief({ pots: pots.slice(1) });
    expect(idle.lead).toBe("1 pot to look at; 2 kept dry; 4 need nothing today.");
    expect([emptyLine, idle.emptyLine]).toEqual([null, null]);
  });

  it("tells sky, thunder hours, age and credit of the weather", () => {
    expect(brief().sky.map(plain)).toEqual([
      "12 °C to 23.5 °C, 80% chance of rain, 4 mm to 24 mm, gusts to 54 km/h.",
      "Thunder is in reach from 15:00 to 17:00: nothing outdoors then.",
    ]);
    expect(brief().trust.lines).toContain("Weather fetched 2 hours ago, at 04:30.");
    expect(brief().trust.credit).toBe("Weather by the invented office");
    expect(brief().trust.lines.join(" ")).not.toContain("from the second");
  });

  it("says so when the weather comes from the second service", () => {
    const weatherAge = { ...plan().weatherAge, source: "fallback" as const };
    expect(brief({ weatherAge }).trust.lines).toContain(
      "The first weather service does not answer; this is from the second, which tells no sunshine and no spread.",
    );
  });

  it.each(REASONS)("has a sentence for %s even when its figures are missing", (code) => {
    const { stops } = brief({ pots: [potPlan("lemon", { action: "water", reason: { code, numbers: {} } })] });
    expect(stops[0]?.deeds[0]?.reason).toMatch(/\.$/);
  });

  it("names a pot that has gone since by its id, and loses no line", () => {
    const { stops } = brief({ pots: [potPlan("lost", { action: "water", spotId: "nowhere" })] });
    expect(stops[0]).toMatchObject({ name: "nowhere", deeds: [{ pot: "lost" }] });
  });
});

describe("the brief as text", () => {
  it("stays within the width and holds every section", () => {
    const text = briefText(brief(), { widthChars: 60 });
    expect(Math.max(...text.split("\n").map((line) => [...line].length))).toBeLessThanOrEqual(60);
    for (const heading of ["South rail", "Keep dry", "Take care", "Coming days", "How sure"])
      expect(text).toContain(heading);
    expect(text).toContain("[ ] Water: Lemon (3 pots), 850 ml each, by 09:00.");
  });
});
