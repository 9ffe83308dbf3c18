import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import Database from "better-sqlite3";
import { describe, expect, it } from "vitest";
import { STORE_VERSION } from "../../../service/store/migrate.ts";
import { openStore } from "../../../service/store/open-store.ts";
import { fill, note, pot, site } from "./bench.ts";
import { emptyStore, tempFolder } from "./test-store.ts";

describe("the store file", () => {
  it("survives a cut of power: write-ahead log, every commit synced, references checked", async () => {
    const store = await emptyStore(join(tempFolder(), "s.db"));
    const pragma = (name: string) => store.raw.pragma(name, { simple: true });
    expect(pragma("journal_mode")).toBe("wal");
    expect(pragma("synchronous")).toBe(2);
    expect(pragma("foreign_keys")).toBe(1);
  });

  it("has strict tables only", async () => {
    const store = await emptyStore();
    const tables = store.raw.pragma("table_list") as { name: string; type: string; strict: number }[];
    const ours = tables.filter(({ name, type }) => type === "table" && !name.startsWith("sqlite_"));
    expect(ours.length).toBeGreaterThan(10);
    expect(ours.filter(({ strict }) => strict !== 1)).toEqual([]);
  });

  it("gives back what was put when it is opened again, under the same house id", async () => {
    const file = join(tempFolder(), "s.db");
    const first = await openStore(file);
    await fill(first);
    const before = { collection: await first.collection("yard"), journal: await first.journal.list("yard") };
    const { houseId } = first;
    await first.close();
    const again = await emptyStore(file);
    expect(await again.collection("yard")).toEqual(before.collection);
    expect(await again.journal.list("yard")).toEqual(before.journal);
    expect(again.houseId).toBe(houseId);
    expect(houseId).toMatch(/^[0-9a-f]{32}$/);
  });

  it("of a newer Leebench is refused and left as it is", async () => {
    const file = join(tempFolder(), "s.db");
    await (await openStore(file)).close();
    const raw = new Database(file);
    raw.pragma(`user_version = ${STORE_VERSION + 1}`);
    raw.close();
    await expect(openStore(file)).rejects.toMatchObject({ code: "store-is-newer" });
    await expect(openStore(file)).rejects.toThrow(/newer Leebench/);
  });

  it("of another program is refused and left as it is", async () => {
    const file = join(tempFolder(), "s.db");
    const raw = new Database(file);
    raw.exec("CREATE TABLE other (x)");
    raw.close();
    await expect(openStore(file)).rejects.toMatchObject({ code: "store-not-ours" });
    const again = new Database(file, { readonly: true });
    expect(again.prepare("SELECT name FROM sqlite_schema").pluck().all()).toEqual(["other"]);
    again.close();
  });

  it("that is no database is refused", async () => {
    const file = join(tempFolder(), "s.db");
    writeFileSync(file, "these are the notes of somebody else, and no database at all ".repeat(20));
    await expect(openStore(file)).rejects.toMatchObject({ code: "store-not-ours" });
  });

  it("in a folder that is not there says what to check", async () => {
    await expect(openStore(join(tempFolder(), "no", "s.db"))).rejects.toThrow(/data folder/);
  });
});

describe("things kept together", () => {
  it("are all there or none is", async () => {
    const store = await emptyStore();
    await fill(store);
    const broken = store.together(async (step) => {
      await step.pots.put("yard", pot({ id: "p2" }));
      await step.journal.append("yard", [note("n1")]);
      throw new Error("pulled the plug");
    });
    await expect(broken).rejects.toThrow("pulled the plug");
    expect((await store.pots.list("yard")).map(({ id }) => id)).toEqual(["p1"]);
    expect(await store.journal.list("yard")).toHaveLength(1);
  });

  it("wait for another program that is writing instead of failing", async () => {
    const file = join(tempFolder(), "s.db");
    const store = await emptyStore(file);
    await fill(store);
    const other = new Worker(HOLDS_THE_STORE, { eval: true, workerData: { file, holdMs: 300 } });
    await once(other, "message");
    // Reads before it writes: a transaction that took its lock at the first write would fail with a stale snapshot.
    const askedAt = performance.now();
    await store.together(async (step) => {
      await step.pots.list("yard");
      await step.journal.append("yard", [note("waited")]);
    });
    expect(performance.now() - askedAt).toBeGreaterThan(200);
    await once(other, "exit");
    expect((await store.journal.list("yard")).map(({ id }) => id)).toEqual(["e-planted", "other", "waited"]);
  });
});

const HOLDS_THE_STORE = `
  const { parentPort, workerData } = require("node:worker_threads");
  const db = require("better-sqlite3")(workerData.file);
  db.exec("BEGIN IMMEDIATE");
  db.exec("INSERT INTO journal (site_id, id, at_utc_ms, recorded_utc_ms, body) VALUES ('yard', 'other', 1, 1, '{\\"kind\\":\\"fed\\"}')");
  parentPort.postMessage("held");
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, workerData.holdMs);
  db.exec("COMMIT");
  db.close();
`;

describe("documents", () => {
  it("are replaced by a later one of the same id", async () => {
    const store = await emptyStore();
    await fill(store);
    await store.pots.put("yard", pot({ name: "Lemon, the old one" }));
    expect(await store.pots.list("yard")).toEqual([pot({ name: "Lemon, the old one" })]);
  });

  it("of two sites do not mix", async () => {
    const store = await emptyStore();
    await fill(store);
    await fill(store, site({ id: "roof", zone: "Asia/Kolkata" }));
    await store.pots.put("roof", pot({ name: "Another" }));
    expect((await store.pots.list("yard"))[0]?.name).toBe("Lemon");
    expect((await store.sites.list()).map(({ id }) => id)).toEqual(["roof", "yard"]);
  });

  it("not of the shape are refused on the way in", async () => {
    const store = await emptyStore();
    await fill(store);
    await expect(store.pots.put("yard", pot({ canopyWidthCm: Number.NaN }))).rejects.toThrow();
    await expect(store.sites.put(site({ zone: "Mars/Olympus" }))).rejects.toThrow();
    expect(await store.pots.list("yard")).toEqual([pot()]);
  });

  it("damaged in the file are named on the way out", async () => {
    const store = await emptyStore();
    await fill(store);
    store.raw.prepare("UPDATE pot SET document = '{}'").run();
    await expect(store.pots.list("yard")).rejects.toMatchObject({
      code: "store-row-damaged",
      data: { what: "pot p1" },
    });
  });

  it("need a site", async () => {
    const store = await emptyStore();
    await expect(store.pots.put("nowhere", pot())).rejects.toThrow(/FOREIGN KEY/);
  });

  it("settings are the usual ones until some are chosen", async () => {
    const store = await emptyStore();
    await fill(store);
    const usual = await store.settings.get("yard");
    await store.settings.put("yard", { ...usual, tripWorth: 9, dryDays: { teased: 4 } });
    expect(await store.settings.get("yard")).toEqual({ ...usual, tripWorth: 9, dryDays: { teased: 4 } });
  });
});
