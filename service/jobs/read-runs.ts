import type { Site } from "../../core/site/site.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { pullDueUtcMs } from "../feed/pull-due.ts";
import type { Store } from "../store/open-store.ts";
import type { ServiceRuns, SiteRuns } from "./due.ts";

/** What the store knows of the jobs' last runs. */
export async function readRuns(store: Store): Promise<{ sites: SiteRuns[]; service: ServiceRuns }> {
  const sites = [];
  for (const site of await store.sites.list()) sites.push(await siteRuns(store, site));
  return { sites, service: { nights: await store.runs.latest("nightly") } };
}

async function siteRuns(store: Store, site: Site): Promise<SiteRuns> {
  const tries = await store.runs.latest("morning", site.id);
  return {
    siteId: site.id,
    zone: site.zone,
    hasPots: !(await store.pots.isEmpty(site.id)),
    morningDays: await store.plans.morningDays(site.id),
    failedMornings: tries.filter(({ outcome }) => outcome === "failed"),
    pullDueUtcMs: pullDueUtcMs(readFeedState(await store.feedState.get(site.id)), site),
  };
}
