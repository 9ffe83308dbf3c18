import Database from "better-sqlite3";
import { Kysely, SqliteDialect } from "kysely";
import { describe, expect, it } from "vitest";
import { migrate, STORE_VERSION } from "../../../service/store/migrate.ts";
import { STEPS } from "../../../service/store/migrations/steps.ts";
import { FILLS } from "./fill-old-store.ts";
import { emptyStore } from "./test-store.ts";

function bare(): { raw: Database.Database; db: Kysely<unknown> } {
  const raw = new Database(":memory:");
  return { raw, db: new Kysely({ dialect: new SqliteDialect({ database: raw }) }) };
}

function shape(raw: Database.Database): unknown[] {
  return raw
    .prepare("SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name")
    .all();
}

function rowCounts(raw: Database.Database): Record<string, unknown> {
  const tables = raw
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck();
  const count = (name: string) => raw.prepare(`SELECT count(*) FROM "${name}"`).pluck().get();
  return Object.fromEntries((tables.all() as string[]).map((name) => [name, count(name)]));
}

describe("upgrading a store", () => {
  it("has a filled store of every version to try it on", () => {
    expect(FILLS).toHaveLength(STEPS.length);
  });

  it.each(STEPS.map((_, index) => index + 1))(
    "from version %i keeps every row and ends in the newest shape",
    async (version) => {
      const { raw, db } = bare();
      for (let reached = 1; reached <= version; reached++) {
        await migrate(db, STEPS.slice(0, reached));
        FILLS[reached - 1]!(raw);
      }
      const before = rowCounts(raw);
      expect(
        Object.values(before).every((count) => (count as number) > 0),
        "every table is filled",
      ).toBe(true);
      expect(await migrate(db)).toEqual({ from: version, to: STORE_VERSION });
      expect(rowCounts(raw)).toMatchObject(before);
      expect(raw.pragma("integrity_check", { simple: true })).toBe("ok");
      expect(raw.pragma("foreign_key_check")).toEqual([]);
      expect(shape(raw)).toEqual(shape((await emptyStore()).raw));
      await db.destroy();
    },
  );

  it("that is up to date changes nothing", async () => {
    const { raw, db } = bare();
    await migrate(db);
    const before = shape(raw);
    expect(await migrate(db)).toEqual({ from: STORE_VERSION, to: STORE_VERSION });
    expect(shape(raw)).toEqual(before);
    await db.destroy();
  });

  it("that breaks off in the middle of a step leaves the version before it, whole", async () => {
    const { raw, db } = bare();
    await migrate(db);
    const before = shape(raw);
    const breaksOff = async (step: Kysely<unknown>) => {
      await step.schema.createTable("half").addColumn("a", "integer").execute();
      throw new Error("power cut");
    };
    await expect(migrate(db, [...STEPS, breaksOff])).rejects.toThrow("power cut");
    expect(shape(raw)).toEqual(before);
    expect(raw.pragma("user_version", { simple: true })).toBe(STORE_VERSION);
    await db.destroy();
  });
});
