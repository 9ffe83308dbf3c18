import { describe, expect, it } from "vitest";
import type { Problem } from "../../../core/problem.ts";
import { readCase } from "../../../service/case/case-schema.ts";
import { writtenCase } from "./case-builder.ts";

// biome-ignore lint/suspicious/noExplicitAny: these tests put wrong things in on purpose
type Anything = any;

function problemsWith(change: (written: Anything) => void): readonly Problem[] {
  const written = structuredClone(writtenCase());
  change(written);
  const read = readCase(written);
  return read.ok ? [] : read.problems;
}

const brief = ({ code, path }: Problem) => `${code} ${path.join(".")}`;

describe("a case as it should be", () => {
  it("gives instants in epoch milliseconds and columns that hold NaN where nothing is known", () => {
    const written = structuredClone(writtenCase()) as Anything;
    written.weather.hours.tempC[3] = null;
    const read = readCase(written);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { nowUtcMs, weather, settings, journal } = read.value;
    expect(nowUtcMs).toBe(Date.UTC(2031, 2, 5, 6));
    expect(journal[0]?.atUtcMs).toBe(Date.UTC(2031, 2, 3, 8));
    expect(weather.hourCount).toBe(72);
    expect(weather.hours.tempC[3]).toBeNaN();
    expect(weather.hours.gustMPerS.every(Number.isNaN)).toBe(true);
    expect([...weather.members!.tempC.slice(0, 4)]).toEqual([14, 16, 14, 16]);
    expect(weather.members!.dewPointC.every(Number.isNaN)).toBe(true);
    expect(settings.horizonDays).toBeGreaterThan(0);
  });
});

describe("a case with faults", () => {
  it("lists three faults of three kinds at once", () => {
    const problems = problemsWith((written) => {
      written.collection.pots[0].groupId = "citris";
      written.collection.site.latDeg = 95;
      written.weather.hours.rainMm.pop();
    });
    expect(problems.map(brief).sort()).toEqual([
      "too-large collection.site.latDeg",
      "unknown-group collection.pots.0.groupId",
      "wrong-length weather.hours.rainMm",
    ]);
  });

  it.each<[string, (written: Anything) => void, string]>([
    [
      "a key that nobody knows",
      (c) => (c.collection.pots[0].hight = 3),
      "unknown-key collection.pots.0.hight",
    ],
    ["a key left out", (c) => delete c.today, "missing today"],
    [
      "a text for a number",
      (c) => (c.collection.site.elevationM = "600"),
      "wrong-type collection.site.elevationM",
    ],
    ["a day that no calendar has", (c) => (c.today = "2031-02-30T06:00Z"), "no-such-day today"],
    ["a local time without its zone", (c) => (c.today = "2031-03-05T06:00"), "wrong-form today"],
    [
      "a zone that no clock keeps",
      (c) => (c.collection.site.zone = "Europe/Madird"),
      "no-such-zone collection.site.zone",
    ],
    [
      "a kind of entry nobody makes",
      (c) => (c.journal[0].body.kind = "plantd"),
      "not-one-of journal.0.body.kind",
    ],
    [
      "a spot that is not there",
      (c) => (c.collection.pots[0].firstSpotId = "steps"),
      "unknown-spot collection.pots.0.firstSpotId",
    ],
    [
      "a mix that is not there",
      (c) => (c.journal[0].body.mixId = "plane"),
      "unknown-mix journal.0.body.mixId",
    ],
    ["a pot that is not there", (c) => (c.journal[0].potId = "boy"), "unknown-pot journal.0.potId"],
    [
      "a component that is not there",
      (c) => (c.collection.mixes[0].recipe.parts[1].component = "perlit"),
      "unknown-component collection.mixes.0.recipe.parts.1.component",
    ],
    [
      "an id given twice",
      (c) => c.collection.spots.push({ ...c.collection.spots[0] }),
      "id-taken collection.spots.1.id",
    ],
    [
      "a member short of an hour",
      (c) => c.weather.members.rainMm[1].pop(),
      "wrong-length weather.members.rainMm.1",
    ],
    ["a member too few", (c) => c.weather.members.rainMm.pop(), "wrong-length weather.members.rainMm"],
    [
      "a start off the hour",
      (c) => (c.weather.start = "2031-03-03T06:10Z"),
      "not-a-whole-hour weather.start",
    ],
    ["kelvin for Celsius", (c) => (c.weather.hours.tempC[5] = 288), "too-large weather.hours.tempC.5"],
    [
      "parts of nothing",
      (c) => (c.collection.mixes[0].recipe.parts[0].parts = 0),
      "too-small collection.mixes.0.recipe.parts.0.parts",
    ],
    [
      "not a case at all",
      (c) => {
        for (const key of Object.keys(c)) delete c[key];
      },
      "missing collection",
    ],
  ])("tells of %s", (_what, change, expected) => {
    expect(problemsWith(change).map(brief)).toContain(expected);
  });

  it("offers the nearest names", () => {
    const problems = problemsWith((written) => {
      written.collection.pots[0].groupId = "citris";
      written.collection.pots[0].canopyWidht = 3;
    });
    const nearest = Object.fromEntries(problems.map(({ code, data }) => [code, data?.nearest as string[]]));
    expect(nearest["unknown-group"]?.[0]).toBe("citrus");
    expect(nearest["unknown-key"]?.[0]).toBe("canopyWidthCm");
  });

  it("looks into a correction as deep as corrections go", () => {
    const problems = problemsWith((written) => {
      const body = { ...written.journal[0].body, mixId: "plane" };
      const inner = { kind: "correction", ofEntryId: "e1", at: "2031-03-03T09:00Z", body };
      const outer = { kind: "correction", ofEntryId: "e2", at: "2031-03-03T09:00Z", body: inner };
      written.journal.push({ id: "e3", at: "2031-03-04T08:00Z", body: outer });
    });
    expect(problems.map(brief)).toEqual(["unknown-mix journal.1.body.body.body.mixId"]);
  });

  it.each([null, 3, "case", [], true])("refuses %j without falling over", (given) => {
    expect(readCase(given).ok).toBe(false);
  });

  it("accepts a base wider than the rim: odd, but such pots are made", () => {
    const problems = problemsWith((written) => {
      written.journal[0].body.vessel.baseCm = 34;
    });
    expect(problems).toEqual([]);
  });
});
