import { afterEach, describe, expect, it } from "vitest";
import { startFeedServer } from "../../../demo/feed-server.ts";
import { inventedWeather } from "../../../demo/invented-weather.ts";
import { DEFAULT_FEED_SETTINGS, type FeedSettings } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { typedOfSpot } from "../../../service/pages/spots/spot-form.tsx";
import { collection, spot } from "../brief/plan-builder.ts";
import { postOf } from "./post-of.ts";
import { type Stock, stockedStore } from "./stocked-store.ts";

const NOW = Date.parse("2027-05-12T05:00Z");
const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function house(stock: Stock = {}, feed: Partial<FeedSettings> = {}) {
  const store = await stockedStore(stock);
  const planned: string[] = [];
  const app = createApp({
    store,
    feed: { ...DEFAULT_FEED_SETTINGS, ...feed },
    now: () => NOW,
    replan: async (siteId) => planned.push(siteId),
  });
  const text = async (address: string) => (await app.request(address)).text();
  const send = async (address: string, fields: Record<string, string>) => {
    const answer = await app.request(address, postOf(fields));
    return { status: answer.status, to: answer.headers.get("location"), text: await answer.text() };
  };
  return { store, planned, text, send };
}

async function invented(): Promise<Partial<FeedSettings>> {
  const server = await startFeedServer({
    weatherAt: () => inventedWeather(NOW, 1),
    nowUtcMs: () => NOW,
    places: [KELPMOUTH],
  });
  closing.push(server.close);
  return { geocodingUrl: server.url, elevationUrl: server.url };
}

const KELPMOUTH = {
  id: 7,
  name: "Kelpmouth",
  latDeg: 41.2,
  lonDeg: 1.5,
  elevationM: 12,
  zone: "Europe/Madrid",
  country: "Nowhere",
  countryCode: "XX",
  region: "The cliffs",
};
const SITE = { name: "Kelpmouth", latDeg: "41,2", lonDeg: "1.5", elevationM: "12", zone: "Europe/Madrid" };
const SPOTS = {
  formId: "form-spots",
  "take.open-terrace": "yes",
  "name.open-terrace": "Roof",
  "take.shed": "yes",
  "name.shed": "Shed",
};
const MIX = {
  formId: "form-mix-1",
  name: "Lean",
  "part.pumice": "3",
  "part.coco-peat": "1.5",
  "part.grit": "",
};
const POT = {
  formId: "form-pot-1",
  name: "Lemon",
  groupId: "citrus",
  count: "2",
  canopyWidthCm: "45",
  plantHeightCm: "70",
  shape: "round",
  material: "unglazed",
  topCm: "30",
  baseCm: "22,5",
  heightCm: "28",
  saucerCm: "",
  mixId: "mix.form-mix-1",
  spotId: "form-spots.open-terrace",
  planted: "on-day",
  plantedDay: "2027-05-02",
  roots: "teased",
  wateredDay: "2027-05-10",
};

const potless = {
  ...collection,
  pots: [],
  spots: [spot("form-spots.open-terrace")],
  mixes: [
    {
      id: "mix.form-mix-1",
      name: "Lean",
      recipe: { kind: "parts" as const, parts: [{ component: "pumice", parts: 1 }] },
    },
  ],
};

describe("from an empty house to a first brief", () => {
  it("asks for place, spots, mix and pot in turn, and keeps each", async () => {
    const { store, planned, text, send } = await house();
    expect(await text("/begin")).toContain("Where do the pots stand?");
    expect((await send("/begin/site", SITE)).to).toBe("/begin");
    expect(await text("/begin")).toContain("Which spots do you have?");
    await send("/begin/spots", SPOTS);
    expect(await text("/begin")).toContain("What are the pots filled with?");
    await send("/begin/mix", MIX);
    expect(await text("/begin")).toContain("Enter a first pot");
    expect((await send("/begin/pot", POT)).to).toBe("/");

    const [site] = await store.sites.list();
    expect(site).toMatchObject({ name: "Kelpmouth", latDeg: 41.2, elevationM: 12, zone: "Europe/Madrid" });
    const held = await store.collection(site!.id);
    expect(held.spots.map(({ name, kind }) => [name, kind])).toEqual([
      ["Roof", "open"],
      ["Shed", "indoors"],
    ]);
    expect(held.mixes[0]?.recipe).toMatchObject({
      parts: [
        { component: "pumice", parts: 3 },
        { component: "coco-peat", parts: 1.5 },
      ],
    });
    expect(held.pots[0]).toMatchObject({ name: "Lemon", groupId: "citrus", count: 2 });
    expect(planned).toEqual([site!.id]);
    const entries = await store.journal.list(site!.id);
    expect(entries.map(({ body, atUtcMs }) => [body.kind, new Date(atUtcMs).toISOString()])).toEqual([
      ["planted", "2027-05-02T06:00:00.000Z"],
      ["watered", "2027-05-10T06:00:00.000Z"],
    ]);
  });

  it("finds a place by name, takes it with one tap, and keeps what stood in the other fields", async () => {
    const { send } = await house({}, await invented());
    const typed = { do: "search", name: "Our yard", latDeg: "41,25", lonDeg: "x", zone: "Mars/Base" };
    const found = await send("/begin/site", { ...typed, place: "kelp" });
    expect(found.status).toBe(200);
    expect(found.text).toContain('name="zone" value="Europe/Madrid"');
    const [, form] = /<button type="submit" form="([^"]+)"[^>]*aria-label="The pots stand in Kelpmouth"/.exec(
      found.text,
    )!;
    expect(found.text).toContain(`<form id="${form}" method="post" action="/begin/site">`);
    for (const kept of ["kelp", "Our yard", "41,25", "x", "Mars/Base"])
      expect(found.text).toContain(`value="${kept}"`);
    expect((await send("/begin/site", { ...typed, place: "zzzz" })).text).toContain("No place called zzzz");
  });

  it("goes on with coordinates when the search is down, and with Enter in their fields", async () => {
    const { send } = await house({}, { geocodingUrl: "http://127.0.0.1:9", timeoutMs: 500 });
    const typed = { ...SITE, do: "search" };
    expect((await send("/begin/site", { ...typed, place: "kelp" })).text).toContain("could not be reached");
    expect((await send("/begin/site", { ...typed, place: " " })).to).toBe("/begin");
  });

  it("says at first what Leebench does, and leads back to a step and on again", async () => {
    const { text, send } = await house();
    expect(await text("/begin")).toContain("Leebench tells you each morning");
    await send("/begin/site", SITE);
    const second = await text("/begin");
    expect(second).not.toContain("Leebench tells you each morning");
    expect(second).toContain('href="/house">Back to: Where do the pots stand?</a>');
    expect(await text("/house")).toContain('href="/begin">Go on with the first steps</a>');
    await send("/begin/spots", SPOTS);
    await send("/begin/mix", MIX);
    expect(await text("/begin")).toContain('href="/mixes">Back to: What are the pots filled with?</a>');
    await send("/begin/pot", POT);
    expect(await text("/house")).not.toContain("Go on with the first steps");
  });

  it("looks up a height that was left out, and asks for it when that fails", async () => {
    const up = await house({}, await invented());
    expect((await up.send("/begin/site", { ...SITE, elevationM: "" })).status).toBe(303);
    const down = await house({}, { elevationUrl: "http://127.0.0.1:9", timeoutMs: 500 });
    const asked = await down.send("/begin/site", { ...SITE, elevationM: "" });
    expect(asked.status).toBe(422);
    expect(asked.text).toContain("could not be looked up");
  });

  it.each([
    ["/begin/site", { name: "", latDeg: "north", lonDeg: "200", zone: "Mars/Base" }, 4],
    ["/begin/spots", { formId: "form-spots", "name.shed": "Shed" }, 1],
    ["/begin/mix", { formId: "form-mix-1", name: "", "part.grit": "much" }, 2],
    [
      "/begin/pot",
      { ...POT, name: "", groupId: "", topCm: "0", plantedDay: "2031-01-01", wateredDay: "x" },
      5,
    ],
    ["/begin/pot", { ...POT, plantedDay: "2031-01-01", wateredDay: "x" }, 2],
    ["/begin/pot", { ...POT, baseCm: "60" }, 1],
  ])(
    "shows every problem of %s beside its field and keeps what was typed",
    async (address, fields, problemCount) => {
      const stock = address === "/begin/site" ? {} : { collection: potless };
      const { send } = await house(stock);
      const { status, text } = await send(address, fields as unknown as Record<string, string>);
      expect(status).toBe(422);
      const said = problemCount === 1 ? "One thing is" : `${problemCount} things are`;
      expect(text).toContain(`${said} still to be mended`);
      for (const typed of Object.values<string>(fields))
        if (!typed.startsWith("form-")) expect(text).toContain(typed);
    },
  );

  it.each([
    ["/begin/site", { ...SITE, name: "" }, "What you call it</a>: This is still needed."],
    ["/begin/site", { ...SITE, latDeg: "95" }, "Latitude</a>: Enter a number from -90 to 90°."],
    ["/begin/spots", { ...SPOTS, "name.shed": " " }, "Shed or garage</a>: This is still needed."],
    ["/begin/mix", { ...MIX, name: "" }, "Name of the mix</a>: This is still needed."],
    ["/begin/pot", { ...POT, name: "" }, "Your name for it</a>: This is still needed."],
    ["/begin/pot", { ...POT, topCm: "1" }, "Width at the rim</a>: Enter a number from 2 to 300 cm."],
    [
      "/begin/pot",
      { ...POT, wateredDay: "2027-05-01" },
      "Last watered until it ran through</a>: It was watered before it was planted.",
    ],
  ])("tells the problem of %s by the label of its field, with its unit", async (address, fields, said) => {
    const { send } = await house(address === "/begin/site" ? {} : { collection: potless });
    const { status, text } = await send(address, fields as unknown as Record<string, string>);
    expect(status).toBe(422);
    const plain = text.replaceAll("\u00a0", " ");
    expect(plain).toContain(said);
    const sentence = said.split(": ")[1]!;
    // Above the form and beside the field.
    expect(plain.split(sentence)).toHaveLength(3);
  });

  it.each([
    ["9.14 W", -9.14],
    ["9,14°w", -9.14],
    ["O 9.14", -9.14],
    ["+9.14", 9.14],
    ["৯.১৪° E", 9.14],
    ["-9.14", -9.14],
  ])("reads the longitude %s", async (lonDeg, expected) => {
    const { store, send } = await house();
    expect((await send("/begin/site", { ...SITE, lonDeg })).status).toBe(303);
    expect((await store.sites.list())[0]?.lonDeg).toBe(expected);
  });

  it.each(["-9.14 W", "9.14 N", "W9.14W", "W"])("asks again about the longitude %s", async (lonDeg) => {
    const { send } = await house();
    expect((await send("/begin/site", { ...SITE, lonDeg })).text).toContain("Enter a number, such as");
  });

  it("refuses a second spot or mix of a name, however it is written", async () => {
    const { store, send } = await house();
    await send("/begin/site", SITE);
    const alike = await send("/begin/spots", { ...SPOTS, "name.shed": "roof" });
    expect(alike.text.split("Another spot has this name")).toHaveLength(5);
    await send("/begin/spots", SPOTS);
    await send("/begin/mix", MIX);
    const site = (await store.sites.list())[0]!;
    const [roof] = (await store.collection(site.id)).spots;
    const spot = { ...typedOfSpot(roof!), formId: "form-spot-9", name: " ROOF" };
    expect((await send("/spots/new", spot)).text).toContain("Another spot has this name");
    expect((await send(`/spots/${roof!.id}`, { ...spot, name: "ROOF" })).status).toBe(303);
    const mix = { ...MIX, formId: "form-mix-2", name: "lean " };
    expect((await send("/mixes/new", mix)).text).toContain("Another mix has this name");
    expect((await send("/mixes/new", { ...mix, name: "Leaner" })).status).toBe(303);
    const held = await store.collection(site.id);
    expect([held.spots.length, held.mixes.length]).toEqual([2, 2]);
  });

  it("asks about a base wider than the rim, and takes yes for an answer", async () => {
    const { send } = await house({ collection: potless });
    const asked = await send("/begin/pot", { ...POT, baseCm: "60" });
    expect(asked.text).toContain('name="vesselSure"');
    expect((await send("/begin/pot", { ...POT, baseCm: "60", vesselSure: "yes" })).status).toBe(303);
  });

  it("sent twice makes one pot", async () => {
    const { store, send } = await house({ collection: potless });
    await send("/begin/pot", POT);
    await send("/begin/pot", POT);
    expect(await store.pots.list("quay")).toHaveLength(1);
    expect(await store.journal.list("quay")).toHaveLength(2);
  });
});
