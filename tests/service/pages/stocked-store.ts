import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Weather } from "../../../core/weather/weather.ts";
import { openStore, type Store } from "../../../service/store/open-store.ts";

export interface Stock {
  readonly collection?: Collection;
  readonly plan?: Plan;
  readonly weather?: Weather;
  readonly journal?: readonly JournalEntry[];
}

/** A store that vanishes with the test, holding what is given. */
export async function stockedStore(stock: Stock = {}): Promise<Store> {
  const store = await openStore(":memory:");
  const { collection, plan, weather, journal } = stock;
  if (!collection) return store;
  const siteId = collection.site.id;
  await store.sites.put(collection.site);
  for (const spot of collection.spots) await store.spots.put(siteId, spot);
  for (const mix of collection.mixes) await store.mixes.put(siteId, mix);
  for (const pot of collection.pots) await store.pots.put(siteId, pot);
  if (journal) await store.journal.append(siteId, journal);
  if (weather) await store.weather.save(siteId, weather);
  if (plan) await store.plans.save(plan, { kind: "asked", madeUtcMs: Date.parse(plan.issuedAt) });
  return store;
}
