import { describe, expect, it } from "vitest";
import { COMPONENTS } from "../../../core/mix/library.ts";
import { collection } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const BRICK = {
  name: "Brick chips",
  role: "draining",
  grain: "coarse",
  compost: "no",
  litreKg: "0,9",
  nutrients: "none",
  caution: "silica-dust",
  "prepare.rinse": "yes",
};
const VESSEL = { shape: "round", material: "plastic", topCm: "25", baseCm: "19", heightCm: "22" };

describe("a component of the grower's own", () => {
  it("is kept, says what was told and what was bracketed, and has the plan made anew", async () => {
    const { store, planned, get, send } = await houseOf({ collection });
    expect(await send("/components/new", BRICK)).toMatchObject({
      status: 303,
      to: "/components/brick-chips",
    });
    expect(planned).toHaveLength(1);
    expect(await store.ownComponents.list("quay")).toMatchObject([
      {
        id: "brick-chips",
        name: "Brick chips",
        told: ["dryDensityKgPerL"],
        prepare: ["rinse"],
        status: "own",
      },
    ]);
    const { text } = await get("/components/brick-chips");
    expect(text).toMatch(/Weight of a litre<\/th><td class="figure">0.9 kg\/l<\/td><td>[^<]*Told by you/);
    expect(text).toMatch(/Pores<\/th><td class="figure">\d+%<\/td><td>\d+% to \d+%\. Bracketed/);
    expect(text).toContain("Brackets come from");
  });

  it("is changed without what was bracketed turning into what was told", async () => {
    const { store, get, send } = await houseOf({ collection });
    await send("/components/new", BRICK);
    const { text } = await get("/components/brick-chips");
    expect(/name="litreKg"[^>]*value="([^"]*)"/.exec(text)?.[1]).toBe("0.9");
    expect(/name="poresPercent"[^>]*value="([^"]*)"/.exec(text)?.[1]).toBe("");
    expect(text).toMatch(/name="prepare.rinse"[^>]*checked/);
    await send("/components/brick-chips", { ...BRICK, name: "Crushed brick", cupPercent: "22" });
    expect(await store.ownComponents.list("quay")).toMatchObject([
      {
        id: "brick-chips",
        name: "Crushed brick",
        told: ["dryDensityKgPerL", "cupCapacityFrac"],
        cupCapacityFrac: { mid: 0.22 },
      },
    ]);
  });

  it("goes into a mix, its batch sheet and its cures under its own name", async () => {
    const { get, send } = await houseOf({ collection });
    await send("/components/new", BRICK);
    const bench = new URLSearchParams({
      ...VESSEL,
      "part.brick-chips": "8",
      "part.coco-peat": "1",
      for: "leafy",
    });
    const { text } = await get(`/mixes/new?${bench}`);
    expect(text).toMatch(/for="part.brick-chips">Brick chips/);
    expect(text).toMatch(/Brick chips: [\d.]+ parts? instead of 8/);
    const kept = await send("/mixes/new", { ...Object.fromEntries(bench), name: "Brickbed" });
    expect(kept.status).toBe(303);
    const sheet = await get(`${kept.to}/batch`);
    expect(sheet.text).toContain("Brick chips</span>");
    expect(sheet.text).toContain("Rinse Brick chips");
    expect((await get("/mixes")).text).toContain("Brick chips 8 and Coco peat 1");
  });

  it("of a name in another script gets an id of its own", async () => {
    const { store, send } = await houseOf({ collection });
    expect((await send("/components/new", { ...BRICK, name: "赤玉土" })).status).toBe(303);
    expect((await store.ownComponents.list("quay"))[0]).toMatchObject({
      id: expect.stringMatching(/^own-[a-z0-9]+$/),
      name: "赤玉土",
    });
  });

  it("never takes another own one's place, while the same form sent twice makes one", async () => {
    const { store, send } = await houseOf({ collection });
    await send("/components/new", BRICK);
    expect((await send("/components/new", BRICK)).status).toBe(303);
    const { status, text } = await send("/components/new", { ...BRICK, litreKg: "0.8" });
    expect([status, text.includes("goes by this name")]).toEqual([422, true]);
    expect(await store.ownComponents.list("quay")).toHaveLength(1);
  });

  it.each<[Record<string, string>, string]>([
    [{ name: "", role: "", grain: "", compost: "" }, "4 things are"],
    [{ role: "holding", grain: "fine", litreKg: "" }, "Weigh a litre of it"],
    [{ litreKg: "2.9", poresPercent: "60" }, "heavier than any stone"],
    [{ water10Percent: "30" }, "all three waters"],
    [
      { water10Percent: "20", water50Percent: "30", water100Percent: "10" },
      "holds no more than a wetter one",
    ],
    [{ cupPercent: "100" }, "less than 100"],
    [{ name: "New" }, "goes by this name"],
  ])("that cannot be reckoned with, %o, is explained", async (change, said) => {
    const { store, send } = await houseOf({ collection });
    const { status, text } = await send("/components/new", { ...BRICK, ...change });
    expect(status).toBe(422);
    expect(text).toContain(said);
    expect(await store.ownComponents.list("quay")).toEqual([]);
  });

  it("stands beside a page that says of every listed component what it is, holds and rests on", async () => {
    const { get } = await houseOf({ collection });
    const { text } = await get("/components");
    for (const { id } of COMPONENTS) {
      const line = new RegExp(`<li id="${id}">.*?</li>`).exec(text)?.[0];
      expect(line, id).toMatch(/<p>[A-Z][^<]{20,}\.<\/p><p>Weighs [\d.]+ kg\/l to /);
    }
    expect(text).toContain("Rests on published measurements.");
  });

  it("is not found where there is none", async () => {
    const { get } = await houseOf({ collection });
    expect((await get("/components/none")).status).toBe(404);
    expect((await get("/mixes")).text).toContain("Describe a component");
  });
});
