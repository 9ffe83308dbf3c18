import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { expect, it, onTestFinished } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { importAll } from "../../../service/store/transfer.ts";
import { collection } from "../brief/plan-builder.ts";
import { asServed } from "./as-served.ts";
import { postOf } from "./post-of.ts";
import { stockedStore } from "./stocked-store.ts";

const NOW = Date.parse("2027-05-12T05:00Z");

it("a copy is made at a tap, downloads as a store that opens, and goes elsewhere as JSON and CSV", async () => {
  const dir = mkdtempSync(join(tmpdir(), "leebench-copies-"));
  onTestFinished(() => rmSync(dir, { recursive: true, force: true }));
  const store = await stockedStore({ collection });
  const app = asServed(
    createApp({
      store,
      feed: DEFAULT_FEED_SETTINGS,
      now: () => NOW,
      copies: { dir, keepCount: 2 },
      replan: async () => undefined,
    }),
  );
  const read = async (address: string) => (await app.request(address)).text();
  expect(await read("/house/copies")).toContain("Make a copy now");
  const made = (await app.request("/house/copies", postOf({}))).headers.get("location") ?? "";
  expect(await read(made)).toContain("Made and checked: leebench-2027-05-12T050000Z.db");
  const copy = new Database(
    Buffer.from(await (await app.request("/house/copies/leebench-2027-05-12T050000Z.db")).arrayBuffer()),
  );
  expect(copy.prepare("SELECT count(*) FROM pot").pluck().get()).toBe(collection.pots.length);
  copy.close();
  const elsewhere = await stockedStore();
  expect(await importAll(elsewhere, JSON.parse(await read("/house/copies/export.json")))).toMatchObject({
    ok: true,
    value: { pots: collection.pots.length },
  });
  expect((await read("/house/copies/pots.csv")).split("\r\n")[0]).toContain("name");
  expect((await app.request("/house/copies/other.db")).status).toBe(404);
});
