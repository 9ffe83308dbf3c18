import { existsSync, readdirSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, it, vi } from "vitest";
import { backUp, listBackups } from "../../../service/store/backup.ts";
import { checkStoreFile } from "../../../service/store/check-store-file.ts";
import { holdAlone } from "../../../service/store/hold-alone.ts";
import { openStore } from "../../../service/store/open-store.ts";
import { restore } from "../../../service/store/restore.ts";
import { fill, note } from "./bench.ts";
import { emptyStore, tempFolder } from "./test-store.ts";

const NOW = Date.parse("2031-05-02T02:30Z");
const DAY_MS = 86_400_000;

async function house() {
  const dataDir = tempFolder();
  const store = await emptyStore(join(dataDir, "leebench.db"));
  await fill(store);
  return { dataDir, store, dir: join(dataDir, "backup") };
}

describe("a backup", () => {
  it("is one file that opens as the same store", async () => {
    const { store, dir } = await house();
    const made = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    expect(readdirSync(dir)).toEqual(["leebench-2031-05-02T023000Z.db"]);
    expect(made.counts).toMatchObject({ site: 1, pot: 1, journal: 1 });
    const copy = await emptyStore(made.file);
    expect(await copy.collection("yard")).toEqual(await store.collection("yard"));
    expect(copy.houseId).toBe(store.houseId);
  });

  it("is made while entries are being written, and holds each of those acknowledged before it began", async () => {
    const { store, dir } = await house();
    await store.journal.append(
      "yard",
      Array.from({ length: 3000 }, (_, index) => note(`before-${index}`)),
    );
    let isDone = false;
    const writing = (async () => {
      for (let index = 0; !isDone; index++) {
        await store.journal.append("yard", [note(`during-${index}`)]);
        await new Promise((resolve) => setImmediate(resolve));
      }
    })();
    const made = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    isDone = true;
    await writing;
    const copy = new Database(made.file, { readonly: true });
    const kept = copy.prepare("SELECT count(*) FROM journal WHERE id LIKE 'before-%'").pluck().get();
    copy.close();
    expect(kept).toBe(3000);
  });

  it("lets the oldest go, the newest stay", async () => {
    const { store, dir } = await house();
    for (const day of [0, 1, 2, 3]) await backUp(store, { dir, nowUtcMs: NOW + day * DAY_MS, keepCount: 2 });
    expect(readdirSync(dir).sort()).toEqual([
      "leebench-2031-05-04T023000Z.db",
      "leebench-2031-05-05T023000Z.db",
    ]);
    expect(listBackups(dir)[0]).toContain("2031-05-05");
  });

  it("leaves other files in the folder alone and clears what an interrupted one left", async () => {
    const { store, dir } = await house();
    await backUp(store, { dir, nowUtcMs: NOW, keepCount: 1 });
    writeFileSync(join(dir, "mine.txt"), "x");
    writeFileSync(join(dir, "leebench-2031-01-01T000000Z.db.part"), "half");
    await backUp(store, { dir, nowUtcMs: NOW + DAY_MS, keepCount: 1 });
    expect(readdirSync(dir).sort()).toEqual(["leebench-2031-05-03T023000Z.db", "mine.txt"]);
  });

  it("that is not whole is thrown away, and the older ones stay", async () => {
    const { store, dir } = await house();
    await backUp(store, { dir, nowUtcMs: NOW, keepCount: 1 });
    const copyBadly = vi.spyOn(store.raw, "backup").mockImplementation(async (file) => {
      const other = await openStore(file as string);
      await other.close();
      return { totalPages: 1, remainingPages: 0 };
    });
    const broken = backUp(store, { dir, nowUtcMs: NOW + DAY_MS, keepCount: 1 });
    await expect(broken).rejects.toMatchObject({ code: "backup-not-whole" });
    copyBadly.mockRestore();
    expect(readdirSync(dir)).toEqual(["leebench-2031-05-02T023000Z.db"]);
  });
});

describe("checking a copy", () => {
  it("finds a page that was overwritten, a file cut short, and another program's file", async () => {
    const { store, dir } = await house();
    await store.journal.append(
      "yard",
      Array.from({ length: 2000 }, (_, index) => note(`n${index}`, "x".repeat(50))),
    );
    const { file, bytes } = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 9 });
    expect(() => checkStoreFile(file)).not.toThrow();
    truncateSync(file, Math.floor(bytes / 2));
    expect(() => checkStoreFile(file)).toThrow();
    const alien = join(dir, "alien.db");
    const db = new Database(alien);
    db.exec("CREATE TABLE a (b)");
    db.close();
    expect(() => checkStoreFile(alien)).toThrow(/another program/);
    expect(() => checkStoreFile(join(dir, "none.db"))).toThrow(/no such backup/);
  });
});

describe("restoring", () => {
  it("brings the backup back and sets the present store aside whole", async () => {
    const { store, dir, dataDir } = await house();
    const { file } = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    await store.journal.append("yard", [note("after-the-backup")]);
    await store.close();
    const restored = await restore({ backupFile: file, dataDir, nowUtcMs: NOW + DAY_MS });
    expect(restored.counts.journal).toBe(1);
    const now = await emptyStore(join(dataDir, "leebench.db"));
    expect((await now.journal.list("yard")).map(({ id }) => id)).toEqual(["e-planted"]);
    const before = await emptyStore(restored.setAside!);
    expect((await before.journal.list("yard")).map(({ id }) => id)).toEqual([
      "e-planted",
      "after-the-backup",
    ]);
  });

  it("works on a machine that has nothing yet", async () => {
    const { store, dir } = await house();
    const { file } = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    const elsewhere = join(tempFolder(), "new");
    expect((await restore({ backupFile: file, dataDir: elsewhere, nowUtcMs: NOW })).setAside).toBeNull();
    const there = await emptyStore(join(elsewhere, "leebench.db"));
    expect(await there.collection("yard")).toEqual(await store.collection("yard"));
  });

  it("works where the present store is beyond reading", async () => {
    const { store, dir, dataDir } = await house();
    const { file } = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    await store.close();
    writeFileSync(join(dataDir, "leebench.db"), "no database any more");
    const { setAside } = await restore({ backupFile: file, dataDir, nowUtcMs: NOW });
    expect(existsSync(setAside!)).toBe(true);
    expect(await (await emptyStore(join(dataDir, "leebench.db"))).journal.list("yard")).toHaveLength(1);
  });

  it("refuses a bad backup and a running service, and then changes nothing", async () => {
    const { store, dir, dataDir } = await house();
    const { file } = await backUp(store, { dir, nowUtcMs: NOW, keepCount: 3 });
    const letGo = holdAlone(join(dataDir, "service.lock"));
    await expect(restore({ backupFile: file, dataDir, nowUtcMs: NOW })).rejects.toMatchObject({
      code: "store-held",
    });
    letGo();
    truncateSync(file, 5000);
    await expect(restore({ backupFile: file, dataDir, nowUtcMs: NOW })).rejects.toThrow();
    expect(readdirSync(dataDir).filter((name) => /incoming|before/.test(name))).toEqual([]);
    expect(await store.journal.list("yard")).toHaveLength(1);
  });
});
