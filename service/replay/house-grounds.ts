import type { Outcome } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import type { FeedSettings } from "../feed/feed-settings.ts";
import type { Store } from "../store/open-store.ts";
import { ownStage } from "./own-stage.ts";
import { yearFromArchive, yearFromHours } from "./own-year.ts";
import { REPLAY_PLACES } from "./replay-places.ts";
import type { Ground } from "./run-replay.ts";

export interface HouseAsk {
  readonly store: Store;
  readonly site: Site;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
}

/** The house's own pots, moved to each of some places. */
export async function houseElsewhere(of: HouseAsk, placeIds: readonly string[]): Promise<Outcome<Ground[]>> {
  const stage = await stageOfHouse(of);
  if (!stage.ok) return stage;
  const places = REPLAY_PLACES.filter(({ id }) => placeIds.includes(id));
  return {
    ok: true,
    value: places.map(({ id, days }) => {
      const daily = days();
      return { placeId: id, daily, stage: { ...stage.value, site: daily.site } };
    }),
  };
}

/**
 * The house's own pots through a year at their own site: from the feed's archive, or, when that cannot be had, from the
 * hours that the house has kept itself.
 */
export async function houseAtHome(of: HouseAsk, year: number): Promise<Outcome<Ground[]>> {
  const stage = await stageOfHouse(of);
  if (!stage.ok) return stage;
  const ask = { ...of, year, stage: stage.value, journal: await of.store.journal.list(of.site.id) };
  const fetched = await yearFromArchive(ask);
  if (fetched.ok) return { ok: true, value: [fetched.value] };
  const past = await of.store.weather.past(of.site.id, Date.UTC(year - 1, 11, 20));
  const kept = past === null ? null : yearFromHours(ask, past);
  return kept?.ok === true ? { ok: true, value: [kept.value] } : fetched;
}

async function stageOfHouse({ store, site, nowUtcMs }: HouseAsk) {
  const [collection, journal] = [await store.collection(site.id), await store.journal.list(site.id)];
  return ownStage({ collection, journal, nowUtcMs });
}
