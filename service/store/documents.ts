import type { Kysely } from "kysely";
import type { z } from "zod";
import { StoreFault } from "./store-fault.ts";
import type { Tables } from "./tables.ts";

type DocumentTableName = "spot" | "mix" | "pot" | "own_component" | "own_group";

export interface Documents<T extends { readonly id: string }> {
  list(siteId: string): Promise<T[]>;
  put(siteId: string, value: T): Promise<void>;
  /** Whether the site has none; the documents themselves are not read. */
  isEmpty(siteId: string): Promise<boolean>;
}

/** Documents of one subject at a site: checked on the way in and on the way out, the later one replacing the earlier. */
export function documents<T extends { readonly id: string }>(
  db: Kysely<Tables>,
  { table, schema, now }: { table: DocumentTableName; schema: z.ZodType<T>; now: () => number },
): Documents<T> {
  return {
    async list(siteId) {
      const rows = await db
        .selectFrom(table)
        .selectAll()
        .where("site_id", "=", siteId)
        .orderBy("id")
        .execute();
      return rows.map((row) => readDocument(schema, row.document, `${table} ${row.id}`));
    },
    async isEmpty(siteId) {
      const row = await db
        .selectFrom(table)
        .select("id")
        .where("site_id", "=", siteId)
        .limit(1)
        .executeTakeFirst();
      return row === undefined;
    },
    async put(siteId, value) {
      const row = { document: writeDocument(schema, value), updated_utc_ms: now() };
      await db
        .insertInto(table)
        .values({ site_id: siteId, id: value.id, ...row })
        .onConflict((clash) => clash.columns(["site_id", "id"]).doUpdateSet(row))
        .execute();
    },
  };
}

/** @throws ZodError when the value is not of the shape: whoever called should have checked at the edge */
export function writeDocument<T>(schema: z.ZodType<T>, value: T): string {
  return JSON.stringify(schema.parse(value));
}

/** @throws StoreFault naming the row when what is stored no longer reads */
export function readDocument<T>(schema: z.ZodType<T>, text: string, what: string): T {
  try {
    return schema.parse(JSON.parse(text));
  } catch (error) {
    throw new StoreFault("store-row-damaged", { what }, error);
  }
}
