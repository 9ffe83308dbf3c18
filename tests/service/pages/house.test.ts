import { describe, expect, it } from "vitest";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import { CHANGES } from "../../../service/about/changes.ts";
import { collection as bare, day, outlook, plan, potPlan } from "../brief/plan-builder.ts";
import { houseOf } from "./house-of.ts";

const collection = {
  ...bare,
  mixes: [
    { id: "m", name: "Lean", recipe: { kind: "parts" as const, parts: [{ component: "pumice", parts: 1 }] } },
  ],
};
const stock = { collection, plan: plan() };

describe("the house rules", () => {
  const rules = {
    dayStartsHour: "7",
    dayEndsHour: "19,5",
    horizonDays: "10",
    tripWorth: "6",
    liftLimitKg: "18",
  };

  it("are kept, with the days of keeping dry, and have the plan made anew", async () => {
    const { store, planned, send } = await houseOf(stock);
    expect((await send("/house/rules", { ...rules, "dry.pruned": "9" })).to).toBe("/house");
    expect(await store.settings.get("quay")).toEqual({
      ...DEFAULT_SETTINGS,
      dayStartsHour: 7,
      dayEndsHour: 19.5,
      horizonDays: 10,
      tripWorth: 6,
      liftLimitKg: 18,
      dryDays: { pruned: 9 },
    });
    expect(planned).toEqual(["quay"]);
  });

  it.each([
    [{ horizonDays: "15" }, "from 1 to 14"],
    [{ horizonDays: "2.5" }, "whole number"],
    [{ dayEndsHour: "6" }, "ends before it starts"],
    [{ liftLimitKg: "0" }, "from 0.1 to 200"],
  ])("are asked again for %o", async (wrong, said) => {
    const { store, send } = await houseOf(stock);
    const { status, text } = await send("/house/rules", { ...rules, ...wrong } as Record<string, string>);
    expect(status).toBe(422);
    expect(text).toContain(said);
    expect(await store.settings.get("quay")).toEqual(DEFAULT_SETTINGS);
  });

  it("lead on to the works it rests on and the licences", async () => {
    const { get } = await houseOf(stock);
    expect((await get("/house")).text).toContain('href="/house/about"');
    const { text } = await get("/house/about");
    expect(text).toContain("Crop evapotranspiration");
    expect(text).toMatch(/hono [\d.]+, MIT/);
    expect(text.includes("This version is still being made.")).toBe(CHANGES.some(({ day }) => day === null));
  });
});

describe("a pasted table", () => {
  const heading =
    "name;groupId;count;canopyWidthCm;plantHeightCm;shape;topCm;baseCm;heightCm;material;mix;spot";
  const good = "Door lemon;citrus;2;45;70;round;30;22,5;28;unglazed;lean;South rail";

  it("becomes pots with a planting each, at once and once", async () => {
    const { store, send, get } = await houseOf(stock);
    const form = {
      formId: "form-0001",
      table: `${heading}\n${good}\n"Aloe; old";aloe-summer;1;30;40;square;20;15;18;plastic;m;rail`,
    };
    expect((await send("/pots/paste", form)).status).toBe(303);
    const { to } = await send("/pots/paste", form);
    expect(to).toBe("/pots?kept=pot.form-0001#kept");
    expect((await get(to!.split("#")[0]!)).text).toContain('role="status">2 pots are kept.<');
    const pots = (await store.pots.list("quay")).filter(({ id }) => id.startsWith("pot."));
    expect(pots.map(({ name, count, firstSpotId }) => [name, count, firstSpotId])).toEqual([
      ["Door lemon", 2, "rail"],
      ["Aloe; old", 1, "rail"],
    ]);
    expect(await store.journal.list("quay")).toHaveLength(2);
  });

  it.each([
    ["tabs", "\t"],
    ["commas", ","],
  ])("may be separated by %s", async (_, mark) => {
    const { send } = await houseOf(stock);
    const table = [heading, good.replace("22,5", "22")].map((line) => line.replaceAll(";", mark)).join("\n");
    expect((await send("/pots/paste", { formId: "form-0001", table })).status).toBe(303);
  });

  it("takes kind, shape and wall by the names that the page shows", async () => {
    const { store, send, get } = await houseOf(stock);
    expect((await get("/pots/paste")).text).toContain("Desert rose with a fixed winter rest");
    const named = "Step fig;fig as bonsai;1;45;70;Round;30;22;28;Glazed clay;lean;South rail";
    const table = `${heading}\n${named}`;
    expect((await send("/pots/paste", { formId: "form-0001", table })).status).toBe(303);
    const pot = (await store.pots.list("quay")).find(({ name }) => name === "Step fig");
    expect(pot?.groupId).toBe("fig-bonsai");
  });

  it("takes the headings that the page shows, in any order and without those that may be left out", async () => {
    const { store, send, get } = await houseOf(stock);
    const shown =
      "Your name for it;Kind of plant;Width of the plant (cm);Height above the rim (cm);Width at the rim (cm)";
    expect((await get("/pots/paste")).text).toContain(shown);
    const table = [
      `Day of planting,Mix,spot,wall,height (CM),Width at the  base,${shown.replaceAll(";", ",")},Grit on top (cm)`,
      '2027-03-02,lean,South rail,Plastic,28,"22,5","Fig, old",Citrus,45,70,30,2',
    ].join("\n");
    expect((await send("/pots/paste", { formId: "form-0001", table })).status).toBe(303);
    const pot = (await store.pots.list("quay")).find(({ name }) => name === "Fig, old");
    expect(pot).toMatchObject({ groupId: "citrus", count: 1, canopyWidthCm: 45, plantHeightCm: 70 });
    const [planted] = await store.journal.list("quay");
    expect(new Date(planted!.atUtcMs).toISOString()).toMatch(/^2027-03-02/);
    expect(planted!.body).toMatchObject({
      vessel: {
        shape: "round",
        topCm: 30,
        baseCm: 22.5,
        heightCm: 28,
        material: "plastic",
        topDressingCm: 2,
      },
    });
  });

  it("asks about a pot that is wider below, and takes it once confirmed", async () => {
    const { send, store } = await houseOf(stock);
    const form = { formId: "form-0001", table: `${heading}\n${good.replace("22,5", "34")}` };
    const asked = await send("/pots/paste", form);
    expect(asked.text).toContain("Row 2, Width at the base: The base is wider than the rim.");
    expect(asked.text).toContain('name="vesselSure"');
    expect((await send("/pots/paste", { ...form, vesselSure: "yes" })).status).toBe(303);
    expect(await store.journal.list("quay")).toHaveLength(1);
  });

  it("drops nothing unsaid: an unknown column, one that comes twice, a cell too many, a row across lines", async () => {
    const { send, store } = await houseOf(stock);
    const told = async (table: string) => (await send("/pots/paste", { formId: "form-0001", table })).text;
    expect(await told(`${heading};bought at\n${good};market`)).toContain("of these columns: bought at.");
    expect(await told(`${heading};Mix\n${good};lean`)).toContain("come twice: Mix.");
    expect(await told(`${heading}\n\n${good};more`)).toContain("Row 3, the whole row: It has more cells");
    expect(await store.journal.list("quay")).toEqual([]);
    await told(`${heading}\n"Two\nlines";${good.replace(/^[^;]*;/, "")}`);
    expect((await store.pots.list("quay")).map(({ name }) => name)).toContain("Two\nlines");
  });

  it("with faults is kept in no part, every fault told with its row", async () => {
    const { store, send } = await houseOf(stock);
    const table = `${heading}\n${good}\nX;oak;0;45;70;round;30;22;28;unglazed;lean;cellar\n;citrus;1;45;70;oval;30;22;28;clay;lean;rail\nY;citrus;1;45;70;;30;22;28;;lean;rail`;
    const { status, text } = await send("/pots/paste", { formId: "form-0001", table });
    expect(status).toBe(422);
    expect(text).toContain("Row 3, How many alike: Enter a number from 1 to 10000.");
    expect(text).toContain("Row 1 is the row of headings.");
    expect(text).toContain("Row 3, Kind of plant: oak is not known. What can stand there is listed below.");
    expect(text).toContain("Row 3, Spot: cellar is not known. Choose one of these: South rail; Tool shed.");
    expect(text).toContain("Row 4, Your name for it: This is still needed.");
    expect(text).toContain("Row 4, Shape: oval is not known. Choose one of these: Round; Square.");
    expect(text).toContain("Row 4, Wall: clay is not known. Choose one of these: Plastic;");
    expect(text).toContain("Row 5, Wall: This is still needed.");
    expect(text).toContain("<li>Spot: South rail; Tool shed</li>");
    expect((await store.pots.list("quay")).some(({ id }) => id.startsWith("pot."))).toBe(false);
  });

  it("follows the example with semicolons and with commas, also where a name holds one of them", async () => {
    const named = stock.collection.mixes.map((mix) => ({ ...mix, name: 'Lean, "old"; gritty' }));
    const { get, send, store } = await houseOf({
      ...stock,
      collection: { ...stock.collection, mixes: named },
    });
    const { text } = await get("/pots/paste");
    const example = /<pre[^>]*>([^<]+)<\/pre>/.exec(text)![1]!.replaceAll("&quot;", '"');
    expect(text).toContain("A text with a comma or semicolon goes in quotation marks.");
    const quoted = '"Lean, ""old""; gritty"';
    const withCommas = example.replace(quoted, "MIX").replaceAll(";", ",").replace("MIX", quoted);
    for (const [index, table] of [example, withCommas].entries())
      expect((await send("/pots/paste", { formId: `form-000${index}`, table })).status).toBe(303);
    expect((await store.pots.list("quay")).filter(({ name }) => name === "Door lemon")).toHaveLength(2);
  });

  it("without its columns, or without rows, says so", async () => {
    const { send } = await houseOf(stock);
    const empty = (await send("/pots/paste", { table: " \n" })).text;
    expect(empty).toContain("Paste your table first.");
    expect(empty).not.toContain("missing from the first row");
    expect((await send("/pots/paste", { table: "name;spot\nx;y" })).text).toContain(
      "missing from the first row: Kind of plant; Width of the plant (cm)",
    );
    expect((await send("/pots/paste", { table: heading })).text).toContain("there is no pot yet");
  });
});

describe("the sheet for an absence", () => {
  it("says by day what to give, to which pot where, and what to keep dry", async () => {
    const pots = [
      potPlan("lemon", { count: 3, outlook: { ...outlook, reachesRefillShareFrac: [0.1, 0.8] } }),
      potPlan("fig", { action: "water", amountMl: 700, reason: { code: "at-refill-point", numbers: {} } }),
      potPlan("plumeria", {
        action: "keep-dry",
        until: day("2027-05-19"),
        reason: { code: "freshly-planted-dry", numbers: {} },
      }),
    ];
    const { get } = await houseOf({ collection, plan: plan({ pots }) });
    const { text } = await get("/holiday");
    expect(text).toContain("Water: Fig, 700 ml.");
    // The builder's outlook is down to 10% of 2400 ml on the second day, which leaves room for 2160 ml, 2150 as poured.
    expect(text).toContain("Water at South rail: Lemon (3 pots) 2.1 l each.");
    expect(text).toContain("Plumeria, until Wednesday 19 May");
    expect(text).toContain("Stay indoors in thunder");
  });
});
