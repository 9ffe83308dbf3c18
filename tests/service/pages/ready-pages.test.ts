import { gunzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { collection as bare, plan } from "../brief/plan-builder.ts";
import { asServed } from "./as-served.ts";
import { postOf } from "./post-of.ts";
import { stockedStore } from "./stocked-store.ts";

const NOW = Date.parse("2027-05-12T05:00Z");
const mixes = [
  { id: "m", name: "Lean", recipe: { kind: "parts" as const, parts: [{ component: "grit", parts: 1 }] } },
];

async function app(clock = { now: NOW }) {
  const store = await stockedStore({ collection: { ...bare, mixes }, plan: plan() });
  return asServed(
    createApp({
      store,
      feed: DEFAULT_FEED_SETTINGS,
      now: () => clock.now,
      replan: async () => undefined,
    }),
  );
}

const tick = { deed: "entryId=tick.water.0001&potId=lemon&action=water&waterMl=850" };

describe("a page that is ready", () => {
  it("is not sent again to a browser that has it", async () => {
    const pages = await app();
    const first = await pages.request("/");
    const etag = first.headers.get("etag") ?? "";
    const again = await pages.request("/", { headers: { "If-None-Match": etag } });
    expect([again.status, await again.text()]).toEqual([304, ""]);
    expect(again.headers.get("content-security-policy")).toContain("default-src 'none'");
  });

  it.each(["/", "/pots", "/style.css"])("nor when it was compressed on its way: %s", async (address) => {
    const pages = await app();
    const packed = { "Accept-Encoding": "gzip" };
    for (const ready of [false, true]) {
      const first = await pages.request(address, { headers: packed });
      expect([ready, first.headers.get("content-encoding")]).toEqual([ready, "gzip"]);
      const etag = first.headers.get("etag") ?? "";
      const again = await pages.request(address, { headers: { ...packed, "If-None-Match": etag } });
      expect([again.status, await again.text()]).toEqual([304, ""]);
    }
  });

  it("says the same compressed or not", async () => {
    const pages = await app();
    const sent = async (encoding: string) => {
      const answer = await pages.request("/pots", { headers: { "Accept-Encoding": encoding } });
      const bytes = Buffer.from(await answer.arrayBuffer());
      const isPacked = answer.headers.get("content-encoding") === "gzip";
      const page = (isPacked ? gunzipSync(bytes) : bytes).toString();
      return { isPacked, page: page.replaceAll(/[0-9a-f]{28}(?=-\d)/g, "own") };
    };
    const [packed, plain] = [await sent("br, gzip;q=0.8"), await sent("gzip;q=0, identity")];
    expect([packed.isPacked, plain.isPacked]).toEqual([true, false]);
    expect(packed.page).toBe(plain.page);
    expect(plain.page).toContain('value="own-');
  });

  it("is made anew after an entry, and after the clock has moved on", async () => {
    const clock = { now: NOW };
    const pages = await app(clock);
    const etag = (await pages.request("/")).headers.get("etag") ?? "";
    await pages.request("/done", postOf(tick));
    const after = await pages.request("/", { headers: { "If-None-Match": etag } });
    expect(after.status).toBe(200);
    expect(await after.text()).toContain("Take back:");
    const later = after.headers.get("etag") ?? "";
    clock.now += 86_400_000;
    expect((await pages.request("/", { headers: { "If-None-Match": later } })).status).toBe(200);
  });

  it("gives every reader forms with ids of their own", async () => {
    const pages = await app();
    const ids = async () =>
      [...(await (await pages.request("/pots")).text()).matchAll(/name="formId" value="([^"]+)"/g)].map(
        (hit) => hit[1],
      );
    const [one, two] = [await ids(), await ids()];
    expect(one.length).toBeGreaterThan(0);
    expect(one).not.toEqual(two);
    expect(one[0]).toMatch(/^[\w-]{8,80}$/);
  });

  it("keeps addresses apart, and nothing that failed", async () => {
    const pages = await app();
    const shown = async (address: string) =>
      (await (await pages.request(address)).text()).includes("Search the journal");
    expect([await shown("/journal?search=a"), await shown("/pots")]).toEqual([true, false]);
    expect((await pages.request("/pots/nobody")).status).toBe(404);
    expect((await pages.request("/pots/nobody")).status).toBe(404);
  });
});

describe("what goes over the air", () => {
  it.each(["/", "/pots", "/mixes/new", "/sky"])(
    "%s and all that it needs stay under 60 KB compressed",
    async (address) => {
      const pages = await app();
      const sizes = await Promise.all(
        [address, "/style.css", "/app.js", "/icon.svg", "/app.webmanifest"].map(async (path) => {
          const answer = await pages.request(path, { headers: { "Accept-Encoding": "gzip" } });
          const bytes = Buffer.from(await answer.arrayBuffer());
          if (answer.headers.get("content-encoding") === "gzip") gunzipSync(bytes);
          return bytes.length;
        }),
      );
      expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(60 * 1024);
      expect(sizes[2]).toBeLessThan(15 * 1024);
    },
  );
});
