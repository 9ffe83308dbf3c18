import { startDemoFeed } from "../../demo/demo-feed.ts";
import { demoCollection } from "../../demo/harbour.ts";
import { demoJournal } from "../../demo/harbour-journal.ts";
import { makePlanNow } from "../../service/jobs/make-plan-now.ts";
import { openStore, type Store } from "../../service/store/open-store.ts";

const COPIES = 12;

/** Pots in the full house. */
export const FULL_HOUSE_POTS = COPIES * demoCollection.pots.length;

/** The demonstration twelve times over, planned once: what a large grower keeps. */
export async function fullHouse(): Promise<Store> {
  const nowUtcMs = Date.now();
  const store = await openStore(":memory:");
  const { site, spots, mixes, pots } = demoCollection;
  await store.sites.put(site);
  for (const spot of spots) await store.spots.put(site.id, spot);
  for (const mix of mixes) await store.mixes.put(site.id, mix);
  const journal = demoJournal(nowUtcMs);
  for (let copy = 0; copy < COPIES; copy++) {
    for (const pot of pots) await store.pots.put(site.id, { ...pot, id: `${pot.id}-${copy}` });
    await store.journal.append(
      site.id,
      journal.map((entry) => ({
        ...entry,
        id: `${entry.id}-${copy}`,
        ...(entry.potId === undefined ? {} : { potId: `${entry.potId}-${copy}` }),
      })),
    );
  }
  const { server, feed } = await startDemoFeed(nowUtcMs);
  const made = await makePlanNow({ store, siteId: site.id, nowUtcMs, feed });
  await server.close();
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return store;
}
