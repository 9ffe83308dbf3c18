import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** A photo as it is kept: WebP, named by what is in it. */
export interface StoredPhoto {
  readonly id: string;
  readonly bytes: Uint8Array;
}

export interface PhotosStore {
  /** The same photo kept twice is one. */
  put(siteId: string, photo: StoredPhoto): Promise<void>;
  get(siteId: string, id: string): Promise<Uint8Array | null>;
  /** In the order of their names. */
  list(siteId: string): Promise<StoredPhoto[]>;
}

export function photosStore(db: Kysely<Tables>, now: () => number): PhotosStore {
  return {
    async put(siteId, { id, bytes }) {
      await db
        .insertInto("photo")
        .values({ site_id: siteId, id, added_utc_ms: now(), bytes })
        .onConflict((clash) => clash.doNothing())
        .execute();
    },
    async get(siteId, id) {
      const row = await db
        .selectFrom("photo")
        .select("bytes")
        .where("site_id", "=", siteId)
        .where("id", "=", id)
        .executeTakeFirst();
      return row?.bytes ?? null;
    },
    list: (siteId) =>
      db.selectFrom("photo").select(["id", "bytes"]).where("site_id", "=", siteId).orderBy("id").execute(),
  };
}
