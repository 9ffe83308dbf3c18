import { describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { collection, plan } from "../brief/plan-builder.ts";
import { asServed } from "./as-served.ts";
import { postOf } from "./post-of.ts";
import { type Stock, stockedStore } from "./stocked-store.ts";

const NOW = Date.parse("2027-05-12T05:00Z");
const mixes = [
  { id: "m", name: "Gritty", recipe: { kind: "parts" as const, parts: [{ component: "grit", parts: 1 }] } },
];
const full = { ...collection, mixes };

async function appWith(given: { stock?: Stock; demo?: boolean; nowUtcMs?: number } = {}) {
  const store = await stockedStore(given.stock ?? { collection: full, plan: plan() });
  const planned: string[] = [];
  const app = asServed(
    createApp({
      store,
      feed: DEFAULT_FEED_SETTINGS,
      now: () => given.nowUtcMs ?? NOW,
      ...(given.demo === undefined ? {} : { demo: given.demo }),
      replan: async (siteId) => planned.push(siteId),
    }),
  );
  const entries = () => store.journal.list("quay");
  return { app, entries, planned };
}

const page = async (address: string, given = {}) => {
  const { app } = await appWith(given);
  const answer = await app.request(address);
  return { status: answer.status, text: (await answer.text()).replaceAll("\u00a0", " "), answer };
};

describe("the brief at /", () => {
  it("shows deeds, reasons, weather credit and nothing from elsewhere", async () => {
    const { status, text } = await page("/");
    expect(status).toBe(200);
    expect(text).toContain("850 ml each, by 09:00");
    expect(text).toContain("31% of its water is left");
    expect(text).toContain("Weather by the invented office");
    expect(text).not.toMatch(/<script(?! src="\/)|<style|\sstyle=|https?:\/\//);
  });

  it("forbids everything inline, from elsewhere, and frames", async () => {
    const { answer } = await page("/");
    const policy = answer.headers.get("content-security-policy") ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain("unsafe");
  });

  it("labels invented data on every page", async () => {
    for (const address of ["/", "/no-such-page"]) {
      expect((await page(address, { demo: true })).text).toContain("are invented");
    }
    expect((await page("/")).text).not.toContain("are invented");
  });

  it("escapes what the grower typed", async () => {
    const pots = full.pots.map((pot) => ({ ...pot, name: `<b onload="x">${pot.id}` }));
    const { text } = await page("/", { stock: { collection: { ...full, pots }, plan: plan() } });
    expect(text).not.toContain("<b onload");
    expect(text).toContain("&lt;b onload");
  });

  it("says so when the brief is for an earlier day, and when there is none", async () => {
    expect((await page("/", { nowUtcMs: NOW + 86_400_000 })).text).toContain("made for Wednesday 12 May");
    expect((await page("/", { stock: { collection: full } })).text).toContain("No brief yet");
  });

  it("leads an empty house to the first step", async () => {
    const { status, answer } = await page("/", { stock: {} });
    expect(status).toBe(303);
    expect(answer.headers.get("location")).toBe("/begin");
  });
});

const tick = (deed: Record<string, string>, headers = {}) =>
  postOf({ deed: new URLSearchParams(deed).toString() }, headers);

describe("a tick", () => {
  const water = { entryId: "tick.water.0001-0001", potId: "lemon", action: "water", waterMl: "850" };

  it("logs the deed, has the plan made anew, and leads back", async () => {
    const { app, entries, planned } = await appWith();
    const answer = await app.request("/done", tick(water));
    expect([answer.status, answer.headers.get("location")]).toEqual([303, "/"]);
    expect(await entries()).toEqual([
      {
        id: water.entryId,
        potId: "lemon",
        atUtcMs: NOW,
        recordedUtcMs: NOW,
        body: { kind: "watered", given: { kind: "measured", waterMl: 850 } },
      },
    ]);
    expect(planned).toEqual(["quay"]);
  });

  it("sent twice is one entry", async () => {
    const { app, entries } = await appWith();
    await app.request("/done", tick(water));
    await app.request("/done", tick(water));
    expect(await entries()).toHaveLength(1);
  });

  it("shows as done with a way to take it back, and taking it back opens the deed again", async () => {
    const { app } = await appWith();
    await app.request("/done", tick(water));
    const done = await (await app.request("/")).text();
    expect(done).toContain("Take back: 07:00 Lemon: Watered, 850");
    expect(done).not.toContain("Done: Water: Lemon");
    // The plan of this test is not made anew, so its first sentence still counts the deed.
    expect(done).toContain("2 things to do");
    expect(done).toMatch(/role="status">One still to do<.*Logged today: 1/s);
    await app.request("/undo", postOf({ entryId: "undo.0001-0001", ofEntryId: water.entryId }));
    const undone = await (await app.request("/")).text();
    expect(undone).toContain("Done: Water: Lemon");
    expect(undone).not.toContain('id="logged"');
  });

  it("logs a carry as a move", async () => {
    const { app, entries } = await appWith();
    const carry = { entryId: "tick.carry-in.0001", potId: "plumeria", action: "carry-in", toSpotId: "shed" };
    await app.request("/done", tick(carry));
    expect((await entries())[0]?.body).toEqual({ kind: "moved", toSpotId: "shed" });
  });

  it.each([
    [{ "sec-fetch-site": "cross-site" }, 403],
    [{ "sec-fetch-site": "same-site" }, 403],
    [{ origin: "https://elsewhere.example" }, 403],
    [{ origin: "null" }, 403],
    [{ "sec-fetch-site": "same-origin" }, 303],
    [{ origin: "http://localhost", host: "localhost" }, 303],
  ])("with %o is answered %d", async (headers, status) => {
    const { app, entries } = await appWith();
    expect((await app.request("/done", tick(water, headers as Record<string, string>))).status).toBe(status);
    expect(await entries()).toHaveLength(status === 303 ? 1 : 0);
  });
});

describe("a brief that cannot be made", () => {
  it("says why and what helps, and offers to try again", async () => {
    const store = await stockedStore({ collection: full });
    const problems = [
      { code: "no-weather-yet", path: [] },
      { code: "feed-unknown-host", path: ["feed"], data: { next: "check-network" } },
    ];
    const app = asServed(
      createApp({
        store,
        feed: DEFAULT_FEED_SETTINGS,
        now: () => NOW,
        replan: async () => ({ ok: false, problems }),
      }),
    );
    const answer = await app.request("/replan", postOf({}));
    const text = await answer.text();
    expect(answer.status).toBe(503);
    expect(text).toContain("No weather has been fetched yet.");
    expect(text).toContain("a way to the internet");
    expect(text).toContain("Make a new brief now");
  });
});
