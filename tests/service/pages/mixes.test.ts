import { describe, expect, it } from "vitest";
import { collection as bare } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const parts = (...list: [string, number][]) => list.map(([component, parts]) => ({ component, parts }));
const collection = {
  ...bare,
  mixes: [
    {
      id: "soft",
      name: "Soft",
      recipe: { kind: "parts" as const, parts: parts(["coco-peat", 4], ["garden-loam", 4]) },
    },
    {
      id: "stony",
      name: "Stony",
      recipe: { kind: "parts" as const, parts: parts(["pumice", 3], ["coco-peat", 1]) },
    },
  ],
};
const VESSEL = { shape: "round", material: "plastic", topCm: "25", baseCm: "19", heightCm: "22" };
const address = (path: string, fields: Record<string, string>) => `${path}?${new URLSearchParams(fields)}`;

describe("the mix bench", () => {
  it("draws the vessel with its layers and tells what it holds", async () => {
    const { get } = await houseOf({ collection });
    const { text } = await get(
      address("/mixes/new", { ...VESSEL, "part.coco-peat": "2", "part.perlite": "1" }),
    );
    expect(text).toContain('class="airless"');
    expect(text).toContain('class="water"');
    expect(text).toMatch(/Holds after draining<\/th><td class="figure">[\d.]+ l/);
    expect(text).toContain("cm airless");
    expect(text).toMatch(/Where lines stand apart there is air, \d+% of it at the top/);
    expect(text).toMatch(/Water at 5 kPa<\/th><td class="figure">\d+%<\/td><td>\d+% to \d+%/);
  });

  it("offers with each finding a change of parts that removes it", async () => {
    const { get } = await houseOf({ collection });
    const { text } = await get(address("/mixes/soft", VESSEL));
    expect(text).toContain("Garden soil is 50% of it");
    const cure = /href="(\/mixes\/soft\?[^"]*)"[^>]*>[^<]*Garden loam/.exec(text)?.[1];
    expect(cure).toBeDefined();
    const cured = await get(cure!);
    expect(cured.status).toBe(200);
    expect(cured.text).not.toContain("Garden soil is");
  });

  it("sets two mixes side by side in the same vessel", async () => {
    const { get } = await houseOf({ collection });
    const { text } = await get(address("/mixes/soft", { ...VESSEL, with: "stony" }));
    expect(text).toContain("Side by side");
    expect(text).toMatch(/to the next watering/);
  });

  it("keeps a mix, drops its test when the parts change, and has the plan made anew", async () => {
    const { store, planned, send } = await houseOf({ collection });
    const kept = { ...VESSEL, name: "Stony", "part.pumice": "3", "part.coco-peat": "1" };
    await send("/mixes/stony/test", { by: "jug", potMl: "1000", addedMl: "600", drainedMl: "300" });
    await send("/mixes/stony", kept);
    const stony = async () => (await store.mixes.list("quay")).find(({ id }) => id === "stony");
    expect((await stony())?.test).toEqual({ potMl: 1000, addedMl: 600, drainedMl: 300 });
    await send("/mixes/stony", { ...kept, "part.pumice": "5" });
    expect((await stony())?.test).toBeUndefined();
    expect(planned).toHaveLength(3);
  });

  it.each([
    [{ "part.pumice": "0" }, "at least one component"],
    [{ "part.pumice": "-2" }, "from 0 to 1000"],
    [{ "part.pumice": "2", topCm: "wide" }, "Enter a number"],
    [{ "part.pumice": "2", topCm: "20", baseCm: "30" }, "wider than the rim"],
  ])("explains %o", async (fields, said) => {
    const { get } = await houseOf({ collection });
    expect((await get(address("/mixes/new", { ...VESSEL, ...fields }))).text).toContain(said);
  });
});

describe("the batch sheet", () => {
  it("tells litres, bags, kilograms and what to do first", async () => {
    const { get } = await houseOf({ collection });
    const { text } = await get(
      address("/mixes/soft/batch", { ...VESSEL, count: "6", sparePercent: "10", bagLitres: "20" }),
    );
    expect(text).toMatch(/Coco peat<\/span> [\d.]+ l loose, [\d.]+ kg to [\d.]+ kg dry\. \d+ bags?\./);
    expect(text).toContain("Soak coco peat in water for a day");
  });
});

it.each([
  ["6", /The pots take \d{1,2} l;/],
  ["1000", /The pots take \d,\d00 l;/],
])("the batch sheet measures %s pots as a grower does, no finer", async (count, expected) => {
  const { get } = await houseOf({ collection });
  const { text } = await get(
    address("/mixes/soft/batch", { ...VESSEL, count, sparePercent: "10", bagLitres: "" }),
  );
  expect(text).toMatch(expected);
});

describe("the grower's own test", () => {
  it.each([
    [{ by: "jug", potMl: "1000", addedMl: "300", drainedMl: "400" }, "More ran out than was poured"],
    [{ by: "jug", potMl: "1000", addedMl: "1200", drainedMl: "200" }, "fill the pot without any mix"],
    [
      { by: "scale", potMl: "1000", filledKg: "0.9", soakedKg: "0.8", testDrainedKg: "0.7" },
      "weighs no more than dry",
    ],
    [
      { by: "scale", potMl: "1000", filledKg: "0.5", soakedKg: "1", testDrainedKg: "1.2" },
      "more than soaked",
    ],
    [{ by: "jug", potMl: "", addedMl: "x", drainedMl: "" }, "3 things are"],
  ])("that cannot be right, %o, is explained", async (fields, said) => {
    const { send } = await houseOf({ collection });
    const { status, text } = await send("/mixes/stony/test", fields as unknown as Record<string, string>);
    expect(status).toBe(422);
    expect(text).toContain(said);
  });
});
