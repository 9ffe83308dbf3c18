import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** What the feed's manners remember of a site between calls; plain JSON of which the store knows nothing. */
export interface FeedStateStore {
  get(siteId: string): Promise<unknown>;
  put(siteId: string, state: unknown): Promise<void>;
}

export function feedStateStore(db: Kysely<Tables>): FeedStateStore {
  return {
    async get(siteId) {
      const row = await db
        .selectFrom("feed_state")
        .selectAll()
        .where("site_id", "=", siteId)
        .executeTakeFirst();
      return row ? JSON.parse(row.document) : null;
    },
    async put(siteId, state) {
      const document = JSON.stringify(state);
      await db
        .insertInto("feed_state")
        .values({ site_id: siteId, document })
        .onConflict((clash) => clash.column("site_id").doUpdateSet({ document }))
        .execute();
    },
  };
}
