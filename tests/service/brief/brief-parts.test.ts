import { describe, expect, it } from "vitest";
import type { Plan, SkySpell } from "../../../core/plan/plan.ts";
import { briefOf } from "../../../service/brief/brief.ts";
import { briefText } from "../../../service/brief/brief-text.ts";
import { wordsFor } from "../../../service/words/words.ts";
import { collection, day, deed, plan, potPlan } from "./plan-builder.ts";

const words = wordsFor("en", "metric");
const brief = (over: Partial<Plan> = {}) => briefOf({ plan: plan(over), collection, words });
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const textOf = (over: Partial<Plan>) => plain(briefText(brief(over), { widthChars: 400 }));

describe("what the grower noted", () => {
  const seen = [
    {
      sign: "wilting" as const,
      notedAt: "2027-05-11T16:00Z",
      causes: [
        { code: "thirst" as const, shareFrac: 0.62 },
        { code: "wet-roots" as const, shareFrac: 0.21 },
      ],
      check: "stick-to-the-base" as const,
      avoid: ["feed" as const, "repot" as const],
    },
  ];

  it("is read back with causes in order, the one look, and what waits", () => {
    const [line] = brief({ pots: [potPlan("lemon", { count: 3, seen })] }).signs.lines;
    expect(line).toMatchObject({
      pot: "Lemon (3 pots)",
      seen: "Wilting, noted on Tuesday 11 May.",
      causes: "Likely causes, first the likeliest: thirst (62%), roots without air in wet mix (21%).",
      meanwhile: "Until that is clear: no feed and no repotting.",
      notes: [],
    });
    expect(line?.check).toMatch(/^Push a dry stick to the base/);
  });

  it("carries the law of labels where pests may be the cause", () => {
    const causes = [{ code: "pests" as const, shareFrac: 0.9 }];
    const [line] = brief({ pots: [potPlan("fig", { seen: [{ ...seen[0]!, causes }] })] }).signs.lines;
    expect(line?.causes).toBe("Likely cause: pests (90%).");
    expect(line?.notes.join(" ")).toContain("only as its label says");
  });

  it("stands in the text of the brief", () => {
    expect(textOf({ pots: [potPlan("fig", { seen })] })).toContain(
      "What you noted\n--------------\n- Fig: Wilting, noted on Tuesday 11 May.\n  Likely causes",
    );
  });
});

describe("after planting", () => {
  it("is told what ends or begins today and tomorrow, and not what is further off", () => {
    const milestones = [
      { kind: "more-sun" as const, day: day("2027-05-12") },
      { kind: "feed" as const, day: day("2027-05-18") },
    ];
    expect(brief({ pots: [potPlan("aloe", { milestones })] }).care.lines).toEqual([
      "Aloe: from Wednesday 12 May on a little more sun each day.",
    ]);
  });
});

describe("spells ahead", () => {
  const spell = (over: Partial<SkySpell>): SkySpell => ({
    kind: "wet",
    from: "2027-05-13T12:00Z",
    to: "2027-05-15T04:00Z",
    shareFrac: 0.88,
    numbers: { lowMm: 20, highMm: 62, peakMmPerH: 14 },
    ...over,
  });
  const said = (over: Partial<SkySpell>) => plain(brief({ spells: [spell(over)] }).spells[0] ?? "");

  it("say from when to when, how much, how sure and how hard", () => {
    expect(said({})).toBe(
      "Wet from 14:00 tomorrow to 06:00 on Saturday 15 May: 20 mm to 62 mm, 88% sure, heavy at times.",
    );
  });

  it("say the day once, that one has begun, and that one outlasts what is reckoned", () => {
    expect(said({ to: "2027-05-13T18:00Z" })).toContain("Wet from 14:00 to 20:00 tomorrow:");
    expect(said({ from: "2027-05-12T04:00Z" })).toContain("Wet now, until 06:00 on Saturday 15 May:");
    const { to: _, ...open } = spell({ kind: "cold", numbers: { extremeC: -2, limitC: 4.4 } });
    expect(plain(brief({ spells: [open] }).spells[0] ?? "")).toBe(
      "Cold from 14:00 tomorrow, to the end of the days reckoned: down to −2 °C; the first of your pots is hurt below 4.5 °C.",
    );
  });

  it("stand before the days they run through", () => {
    const text = textOf({ spells: [spell({})] });
    expect(text.indexOf("- Wet from")).toBeGreaterThan(text.indexOf("Coming days"));
    expect(text.indexOf("- Wet from")).toBeLessThan(text.indexOf("- Friday 14 May"));
  });
});

describe("a deed that is less likely than not to be needed", () => {
  const rare = { word: "unlikely" as const, shareFrac: 0.2 };
  const notesOf = (over: Parameters<typeof deed>[0]) =>
    brief({ pots: [potPlan("fig", deed(over))] }).stops[0]?.deeds[0]?.notes ?? [];

  it("says why it is asked for all the same, and how it is done", () => {
    const reason = { code: "gusts" as const, numbers: { gustMPerS: 15, limitMPerS: 17 } };
    expect(notesOf({ action: "brace", reason, confidence: rare })).toEqual([
      "Tie it to something fixed, set it close among others, or lay it down on its lee side.",
      "The chance is only 20%; it is asked for because the loss would outweigh the trouble.",
    ]);
  });

  it("against cold is a wrap and not a cover", () => {
    const reason = { code: "cold-night" as const, numbers: { coldestC: -1, limitC: 4 } };
    const wrap = brief({ pots: [potPlan("fig", deed({ action: "top-cover", reason }))] }).stops[0]?.deeds[0];
    expect(wrap?.sentence).toBe("Wrap against cold: Fig.");
    expect(wrap?.notes[0]).toMatch(/down to the floor, off the leaves; off again by morning sun/);
  });

  it("of part of a watering says not to go on until it runs through", () => {
    expect(notesOf({ action: "water", amountMl: 120 })).toEqual([
      "Only this much: not until it runs through.",
    ]);
  });
});

describe("pots without room under cover", () => {
  it("are named with what helps them where they stand", () => {
    const cover = deed({ action: "top-cover" });
    const pots = [potPlan("fig", cover), potPlan("aloe")];
    const caution = { code: "no-room" as const, potIds: ["fig", "aloe"], numbers: { potCount: 2 } };
    expect(brief({ pots, cautions: [caution] }).cautions.lines[0]?.sentence).toBe(
      "No room under cover is left for Fig and Aloe. Instead: cover Fig and set Aloe close among others against a wall.",
    );
  });
});

describe("hours for potting", () => {
  it("say once when to begin what takes time, and which pots are not to be repotted in them", () => {
    const window = { ...plan().workWindows[0]!, prepareFrom: "2027-05-13T06:00Z" };
    const resting = potPlan("aloe", { holds: [{ kind: "repot", until: null, because: "resting" }] });
    const { lines } = brief({ workWindows: [window, { ...window }], pots: [resting] }).windows;
    expect(lines).toEqual([
      "Friday 14 May, 08:00 to 12:00: 96% sure to be dry, 3 dry days after. Begin to soak or damp down what the mix needs at 08:00 tomorrow.",
      "Friday 14 May, 08:00 to 12:00: 96% sure to be dry, 3 dry days after.",
      "Not for Aloe: at rest, or the nights too cold for cut roots.",
    ]);
  });
});

it("says when to prepare for the sure day, not for the doubtful gap before it", () => {
  const [sure] = plan().workWindows;
  const gap = {
    ...sure!,
    from: "2027-05-13T05:00Z",
    to: "2027-05-13T07:00Z",
    dryShareFrac: 0.76,
    prepareFrom: "2027-05-12T05:00Z",
  };
  const { lines } = brief({ workWindows: [gap, { ...sure!, prepareFrom: "2027-05-13T06:00Z" }] }).windows;
  expect(lines.map((line) => line.includes("Begin to soak"))).toEqual([false, true]);
});

describe("how far it came true", () => {
  const telling = (toldFrac: number, cameTrueFrac: number, count: number) => ({
    toldFrac,
    cameTrueFrac,
    count,
  });
  const none = { count: 0, bands: [], brier: null, telling: null };

  it("is one sentence for rain and one for pots", () => {
    const kept = {
      rain: { ...none, count: 60, telling: telling(0.7, 27 / 41, 41), crpsMm: 1.2, valueFrac: 0.4 },
      dry: { ...none, count: 12, telling: telling(0.8, 0.75, 12) },
    };
    expect(brief({ kept }).trust.lines.slice(-2)).toEqual([
      "When it said 70% for rain, it rained 66% of the time, 41 days.",
      "When it gave a pot 80% to be dry, it felt light 75% of the time, 12 pots felt.",
    ]);
  });

  it("is not said while too little is known", () => {
    const kept = { rain: { ...none, crpsMm: null, valueFrac: null }, dry: none };
    expect(brief({ kept }).trust.lines).toEqual(brief().trust.lines);
  });
});
