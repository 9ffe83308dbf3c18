import type { JournalEntry } from "../../core/journal/entry.ts";
import { settleEntries } from "../../core/journal/settle-entries.ts";
import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Site } from "../../core/site/site.ts";
import type { PageContext } from "./page-context.ts";

/** What stands at the site and what is planned for it, as stored now. */
export interface SiteNow {
  readonly site: Site;
  readonly collection: Collection;
  /** Corrections and undos applied, in the order in which things happened. */
  readonly journal: readonly JournalEntry[];
  readonly plan: Plan | null;
}

/** The one site of this house; null until it has been entered. */
export async function siteNow({ store }: PageContext): Promise<SiteNow | null> {
  const [site] = await store.sites.list();
  if (!site) return null;
  const [collection, entries, plan] = await Promise.all([
    store.collection(site.id),
    store.journal.list(site.id),
    store.plans.latest(site.id),
  ]);
  return { site, collection, journal: settleEntries(entries).entries, plan };
}
