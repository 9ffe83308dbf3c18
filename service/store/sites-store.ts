import type { Kysely } from "kysely";
import { DEFAULT_SETTINGS, type Settings } from "../../core/plan/settings.ts";
import type { Site } from "../../core/site/site.ts";
import { SettingsSchema } from "../case/settings-schema.ts";
import { SiteSchema } from "../case/site-schema.ts";
import { readDocument, writeDocument } from "./documents.ts";
import type { Tables } from "./tables.ts";

export interface SitesStore {
  list(): Promise<Site[]>;
  get(siteId: string): Promise<Site | undefined>;
  put(site: Site): Promise<void>;
}

export interface SettingsStore {
  /** The grower's choices; the usual ones where nothing was chosen. */
  get(siteId: string): Promise<Settings>;
  put(siteId: string, settings: Settings): Promise<void>;
}

export function sitesStore(db: Kysely<Tables>, now: () => number): SitesStore {
  return {
    async list() {
      const rows = await db.selectFrom("site").selectAll().orderBy("id").execute();
      return rows.map((row) => readDocument(SiteSchema, row.document, `site ${row.id}`));
    },
    async get(siteId) {
      const row = await db.selectFrom("site").selectAll().where("id", "=", siteId).executeTakeFirst();
      return row && readDocument(SiteSchema, row.document, `site ${row.id}`);
    },
    async put(site) {
      const row = { document: writeDocument(SiteSchema, site), updated_utc_ms: now() };
      await db
        .insertInto("site")
        .values({ id: site.id, ...row })
        .onConflict((clash) => clash.column("id").doUpdateSet(row))
        .execute();
    },
  };
}

export function settingsStore(db: Kysely<Tables>, now: () => number): SettingsStore {
  return {
    async get(siteId) {
      const row = await db
        .selectFrom("site_settings")
        .selectAll()
        .where("site_id", "=", siteId)
        .executeTakeFirst();
      return row ? readDocument(SettingsSchema, row.document, `settings ${siteId}`) : DEFAULT_SETTINGS;
    },
    async put(siteId, settings) {
      const row = { document: writeDocument(SettingsSchema, settings), updated_utc_ms: now() };
      await db
        .insertInto("site_settings")
        .values({ site_id: siteId, ...row })
        .onConflict((clash) => clash.column("site_id").doUpdateSet(row))
        .execute();
    },
  };
}
