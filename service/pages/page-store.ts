import type { JournalEntry } from "../../core/journal/entry.ts";
import type { Mix } from "../../core/mix/mix.ts";
import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Pot } from "../../core/pot/pot.ts";
import type { Site } from "../../core/site/site.ts";
import type { Spot } from "../../core/site/spot.ts";
import type { Weather } from "../../core/weather/weather.ts";

interface Shelf<T> {
  list(siteId: string): Promise<T[]>;
  put(siteId: string, value: T): Promise<void>;
}

/** What the pages ask of the store. */
export interface PageStore {
  readonly sites: { list(): Promise<Site[]>; put(site: Site): Promise<void> };
  readonly spots: Shelf<Spot>;
  readonly mixes: Shelf<Mix>;
  readonly pots: Shelf<Pot>;
  readonly journal: {
    append(siteId: string, entries: readonly JournalEntry[]): Promise<{ added: number; repeated: number }>;
    list(siteId: string): Promise<JournalEntry[]>;
  };
  readonly weather: { latest(siteId: string): Promise<Weather | null> };
  readonly plans: { latest(siteId: string): Promise<Plan | null> };
  collection(siteId: string): Promise<Collection>;
}
