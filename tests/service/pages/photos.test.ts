import sharp from "sharp";
import { expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { collection } from "../brief/plan-builder.ts";
import { asServed } from "./as-served.ts";
import { stockedStore } from "./stocked-store.ts";

const NOW = Date.parse("2027-05-12T05:00Z");
const FORM_ID = "form-0001";
const MEGABYTE = 1024 * 1024;

async function house() {
  const store = await stockedStore({ collection });
  let plannedCount = 0;
  const app = asServed(
    createApp({
      store,
      feed: DEFAULT_FEED_SETTINGS,
      now: () => NOW,
      replan: async () => plannedCount++,
    }),
  );
  const send = async (fields: Record<string, string>, file: Blob | null) => {
    const body = new FormData();
    for (const [name, value] of Object.entries(fields)) body.append(name, value);
    if (file) body.append("photo", file, "leaf.jpg");
    return app.request("/pots/lemon/photo", { method: "POST", body });
  };
  const journal = () => store.journal.list(collection.site.id);
  return { app, send, journal, planned: () => plannedCount };
}

async function leaf(): Promise<Blob> {
  const drawn = sharp({ create: { width: 60, height: 40, channels: 3, background: "#375" } });
  return new Blob([Uint8Array.from(await drawn.jpeg().toBuffer())], { type: "image/jpeg" });
}

it("a photo is kept once with its entry, and shown in the journal and on the pot's page", async () => {
  const { app, send, journal, planned } = await house();
  const file = await leaf();
  for (let sent = 0; sent < 2; sent++) {
    const answer = await send(
      { formId: FORM_ID, text: "Pale leaf", happenedAtUtcMs: String(NOW - 60_000) },
      file,
    );
    expect(answer.status).toBe(303);
    expect(answer.headers.get("location")).toMatch(/^\/pots\/lemon\?kept=log\.form-0001\.\w+#kept$/);
  }
  const entries = await journal();
  expect(entries).toHaveLength(1);
  expect(entries[0]).toMatchObject({
    potId: "lemon",
    atUtcMs: NOW - 60_000,
    body: { kind: "photo", text: "Pale leaf" },
  });
  for (const page of ["/journal", "/pots/lemon"]) {
    const html = await (await app.request(page)).text();
    expect(html).toContain("Pale leaf");
    const [, address] = /<img src="(\/photos\/[^"]+)" width="60" height="40"/.exec(html) ?? [];
    const photo = await app.request(address ?? "");
    expect([photo.status, photo.headers.get("content-type")]).toEqual([200, "image/webp"]);
    expect((await sharp(Buffer.from(await photo.arrayBuffer())).metadata()).width).toBe(60);
  }
  expect(planned()).toBe(0);
});

it("what is no photo is asked for again, with the words that were typed", async () => {
  const { send, journal } = await house();
  const asked = await send({ formId: FORM_ID, text: "Pale leaf" }, new Blob(["not a photo"]));
  expect(asked.status).toBe(422);
  const html = await asked.text();
  expect(html).toContain("does not open as a photo");
  expect(html).toContain("Pale leaf");
  expect(await (await send({ formId: FORM_ID, text: "" }, null)).text()).toContain("Choose a photo first");
  expect(await journal()).toEqual([]);
});

it("takes a photo larger than any form may be, and refuses one larger than phones make", async () => {
  const { send, app } = await house();
  const padded = async (bytes: number) => new Blob([await leaf(), new Uint8Array(bytes)]);
  expect((await send({ formId: FORM_ID, text: "" }, await padded(3 * MEGABYTE))).status).toBe(303);
  const refused = await send({ formId: FORM_ID, text: "" }, await padded(17 * MEGABYTE));
  expect(refused.status).toBe(413);
  expect(await refused.text()).toContain("Send a smaller one");
  expect((await app.request("/photos/none")).status).toBe(404);
});
