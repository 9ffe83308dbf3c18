import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Site } from "../../../core/site/site.ts";
import type { Spot } from "../../../core/site/spot.ts";
import type { Weather } from "../../../core/weather/weather.ts";
import type { PageStore } from "../../../service/pages/page-store.ts";

function shelf<T extends { readonly id: string }>(first: readonly T[]) {
  const held = new Map(first.map((value) => [value.id, value]));
  return {
    list: async (_siteId: string) => [...held.values()],
    put: async (_siteId: string, value: T) => {
      held.set(value.id, value);
    },
  };
}

export interface MemoryStore extends PageStore {
  readonly entries: JournalEntry[];
}

/** A store that forgets; one site at most. */
export function memoryStore(
  given: { collection?: Collection; plan?: Plan; weather?: Weather; entries?: JournalEntry[] } = {},
): MemoryStore {
  const { collection, plan = null, weather = null, entries = [] } = given;
  const sites = new Map<string, Site>(collection ? [[collection.site.id, collection.site]] : []);
  const spots = shelf<Spot>(collection?.spots ?? []);
  const mixes = shelf<Mix>(collection?.mixes ?? []);
  const pots = shelf<Pot>(collection?.pots ?? []);
  return {
    entries,
    sites: {
      list: async () => [...sites.values()],
      put: async (site) => {
        sites.set(site.id, site);
      },
    },
    spots,
    mixes,
    pots,
    journal: {
      list: async () => entries,
      append: async (_siteId, added) => {
        const fresh = added.filter(({ id }) => !entries.some((entry) => entry.id === id));
        entries.push(...fresh);
        return { added: fresh.length, repeated: added.length - fresh.length };
      },
    },
    weather: { latest: async () => weather },
    plans: { latest: async () => plan },
    collection: async (siteId) => ({
      site: sites.get(siteId) as Site,
      spots: await spots.list(siteId),
      mixes: await mixes.list(siteId),
      pots: await pots.list(siteId),
    }),
  };
}
