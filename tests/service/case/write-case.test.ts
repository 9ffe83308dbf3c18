import { describe, expect, it } from "vitest";
import type { EntryBody } from "../../../core/journal/entry.ts";
import type { PlanInput } from "../../../core/plan/make-plan.ts";
import { readCase } from "../../../service/case/case-schema.ts";
import { writeCase } from "../../../service/case/write-case.ts";
import { writtenCase } from "./case-builder.ts";

const MS = Date.UTC(2031, 2, 4, 7);

/** One of each kind of entry, so that no kind is lost between the page and the file. */
const BODIES: readonly EntryBody[] = [
  { kind: "watered", given: { kind: "measured", waterMl: 500 } },
  { kind: "watered", given: { kind: "ran-through" } },
  { kind: "watered", given: { kind: "poured-drained", pouredMl: 800, drainedMl: 200 } },
  { kind: "moved", toSpotId: "step" },
  { kind: "weighed", massKg: 9.25 },
  { kind: "checked", dryToCm: 4, feel: "light" },
  { kind: "fed" },
  { kind: "treated", text: "soap" },
  { kind: "pruned" },
  { kind: "leaf", state: "new-growth" },
  { kind: "trouble", sign: "wilting" },
  { kind: "note", text: "a note" },
  { kind: "photo", ref: "2031-03-04-bay.jpg" },
  { kind: "gone", how: "given-away" },
  { kind: "rain-gauge", rainMm: 4, sinceUtcMs: MS - 86_400_000 },
  { kind: "thermometer", minC: 3, maxC: 19, sinceUtcMs: MS - 86_400_000 },
  { kind: "undo", ofEntryId: "e1" },
  { kind: "correction", ofEntryId: "e1", atUtcMs: MS, potId: "bay", body: { kind: "pruned" } },
];

function input(): PlanInput {
  const read = readCase(writtenCase());
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const more = BODIES.map((body, i) => ({
    id: `m${i}`,
    atUtcMs: MS,
    recordedUtcMs: MS + 1,
    potId: "bay",
    body,
  }));
  const ownGroups = [ownGroup()];
  return {
    ...read.value,
    collection: { ...read.value.collection, ownGroups },
    journal: [...read.value.journal, ...more],
  };
}

function ownGroup() {
  const values = {
    killC: -3,
    damageC: 1,
    stopWaterNightC: null,
    cutWaterNightC: 6,
    refillFrac: 0.4,
    restRefillFrac: 0.2,
    basalCoefficient: 0.8,
    restCoefficient: 0.4,
    depletionFrac: 0.5,
    growth: "any",
    fixedRest: false,
    leaflessIsRest: false,
    leafy: true,
    wetBaseHours: 48,
    dryDays: 4,
    lightMjPerM2PerDay: 8,
    heatC: 36,
    sap: "none",
  } as const;
  const names = Object.keys(values) as (keyof typeof values)[];
  const evidence = Object.fromEntries(names.map((name) => [name, { status: "chosen" as const, key: null }]));
  return {
    id: "my-bay",
    values,
    evidence: evidence as Record<keyof typeof values, { status: "chosen"; key: null }>,
  };
}

describe("a case written and read again", () => {
  it("is the same, through JSON, every kind of entry included", () => {
    const before = input();
    const again = readCase(JSON.parse(JSON.stringify(writeCase(before))));
    expect(again).toEqual({ ok: true, value: before });
  });

  it("keeps the unknown unknown", () => {
    const before = input();
    before.weather.hours.tempC[7] = Number.NaN;
    const written = writeCase(before);
    expect(written.weather.hours.tempC[7]).toBeNull();
    expect(written.weather.hours.cloudFrac?.every((value) => value === null)).toBe(true);
  });

  it("puts one array a member", () => {
    const written = writeCase(input());
    expect(written.weather.members?.tempC.map((member) => member[0])).toEqual([14, 16]);
    expect(written.weather.members?.tempC[0]).toHaveLength(72);
  });
});
