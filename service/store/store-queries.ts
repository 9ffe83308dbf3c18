import type { Kysely } from "kysely";
import type { Component } from "../../core/mix/component.ts";
import type { Mix } from "../../core/mix/mix.ts";
import type { Collection } from "../../core/plan/collection.ts";
import type { PlantGroup } from "../../core/plant/group.ts";
import type { Pot } from "../../core/pot/pot.ts";
import type { Spot } from "../../core/site/spot.ts";
import { CollectionSchema } from "../case/collection-schema.ts";
import { type AccountsStore, accountsStore } from "./accounts-store.ts";
import { type ChoicesStore, choicesStore } from "./choices-store.ts";
import { type Documents, documents } from "./documents.ts";
import { type JournalStore, journalStore } from "./journal-store.ts";
import { type KeptAnswersStore, keptAnswersStore } from "./kept-answers-store.ts";
import { type OutboxStore, outboxStore } from "./outbox-store.ts";
import { type ChannelsStore, channelsStore, type PeopleStore, peopleStore } from "./people-store.ts";
import { type PhotosStore, photosStore } from "./photos-store.ts";
import { type PlanInputsStore, planInputsStore } from "./plan-inputs-store.ts";
import { type PlansStore, plansStore } from "./plans-store.ts";
import { type RunsStore, runsStore } from "./runs-store.ts";
import { type SessionsStore, sessionsStore } from "./sessions-store.ts";
import { type SettingsStore, type SitesStore, settingsStore, sitesStore } from "./sites-store.ts";
import { type StateStore, stateStore } from "./state-store.ts";
import { StoreFault } from "./store-fault.ts";
import type { Tables } from "./tables.ts";
import { type TokensStore, tokensStore } from "./tokens-store.ts";
import { type WeatherStore, weatherStore } from "./weather-store.ts";

export interface StoreQueries {
  readonly choices: ChoicesStore;
  readonly sites: SitesStore;
  readonly spots: Documents<Spot>;
  readonly mixes: Documents<Mix>;
  readonly pots: Documents<Pot>;
  readonly ownComponents: Documents<Component>;
  readonly ownGroups: Documents<PlantGroup>;
  readonly settings: SettingsStore;
  readonly journal: JournalStore;
  readonly photos: PhotosStore;
  readonly weather: WeatherStore;
  readonly plans: PlansStore;
  readonly planInputs: PlanInputsStore;
  readonly outbox: OutboxStore;
  readonly runs: RunsStore;
  readonly people: PeopleStore;
  readonly channels: ChannelsStore;
  readonly feedState: StateStore;
  readonly watchState: StateStore;
  readonly accounts: AccountsStore;
  readonly sessions: SessionsStore;
  readonly tokens: TokensStore;
  readonly keptAnswers: KeptAnswersStore;
  /** @throws StoreFault when there is no such site */
  collection(siteId: string): Promise<Collection>;
}

const SHAPES = CollectionSchema.shape;

/** The query modules on one connection or inside one transaction. */
export function storeQueries(db: Kysely<Tables>, now: () => number): StoreQueries {
  const of = <T extends { readonly id: string }>(table: DocumentTable, schema: unknown) =>
    documents<T>(db, { table, schema: schema as never, now });
  const parts = {
    choices: choicesStore(db),
    sites: sitesStore(db, now),
    spots: of<Spot>("spot", SHAPES.spots.element),
    mixes: of<Mix>("mix", SHAPES.mixes.element),
    pots: of<Pot>("pot", SHAPES.pots.element),
    ownComponents: of<Component>("own_component", SHAPES.ownComponents.unwrap().element),
    ownGroups: of<PlantGroup>("own_group", SHAPES.ownGroups.unwrap().element),
    settings: settingsStore(db, now),
    journal: journalStore(db),
    photos: photosStore(db, now),
    weather: weatherStore(db),
    plans: plansStore(db),
    planInputs: planInputsStore(db),
    outbox: outboxStore(db),
    runs: runsStore(db),
    people: peopleStore(db, now),
    channels: channelsStore(db, now),
    feedState: stateStore(db, "feed_state"),
    watchState: stateStore(db, "watch_state"),
    accounts: accountsStore(db),
    sessions: sessionsStore(db),
    tokens: tokensStore(db),
    keptAnswers: keptAnswersStore(db),
  };
  return { ...parts, collection: (siteId) => collectionOf(parts, siteId) };
}

type DocumentTable = "spot" | "mix" | "pot" | "own_component" | "own_group";

async function collectionOf(parts: Omit<StoreQueries, "collection">, siteId: string): Promise<Collection> {
  const site = await parts.sites.get(siteId);
  if (!site) throw new StoreFault("store-row-damaged", { what: `site ${siteId}` });
  const [spots, mixes, pots, ownComponents, ownGroups] = [
    await parts.spots.list(siteId),
    await parts.mixes.list(siteId),
    await parts.pots.list(siteId),
    await parts.ownComponents.list(siteId),
    await parts.ownGroups.list(siteId),
  ];
  return {
    site,
    spots,
    mixes,
    pots,
    ...(ownComponents.length > 0 ? { ownComponents } : {}),
    ...(ownGroups.length > 0 ? { ownGroups } : {}),
  };
}
