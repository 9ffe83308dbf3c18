import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** One small thing remembered a site, plain JSON of which the store knows nothing. */
export interface StateStore {
  /** Null where nothing was put yet. */
  get(siteId: string): Promise<unknown>;
  put(siteId: string, state: unknown): Promise<void>;
}

/** `feed_state` is what the feed's manners remember between calls, `watch_state` what was told in the day. */
export function stateStore(db: Kysely<Tables>, table: "feed_state" | "watch_state"): StateStore {
  return {
    async get(siteId) {
      const row = await db
        .selectFrom(table)
        .select("document")
        .where("site_id", "=", siteId)
        .executeTakeFirst();
      return row ? JSON.parse(row.document) : null;
    },
    async put(siteId, state) {
      const document = JSON.stringify(state);
      await db
        .insertInto(table)
        .values({ site_id: siteId, document })
        .onConflict((clash) => clash.column("site_id").doUpdateSet({ document }))
        .execute();
    },
  };
}
