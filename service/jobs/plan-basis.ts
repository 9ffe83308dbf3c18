import type { JournalEntry } from "../../core/journal/entry.ts";
import { settleEntries } from "../../core/journal/settle-entries.ts";
import type { Collection } from "../../core/plan/collection.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { Weather } from "../../core/weather/weather.ts";
import type { PlanInput } from "../case/plan-input.ts";
import { withPast } from "../store/past-hours.ts";
import type { PlanBasis } from "../store/plan-inputs-store.ts";
import type { StoredPlan } from "../store/plans-store.ts";
import type { StoreQueries } from "../store/store-queries.ts";

const DAY_MS = 86_400_000;
/**
 * How far back the journal is replayed over kept weather. Chosen by us: a pot forgets its water in weeks and no
 * aftercare is longer, while each day costs time at every plan.
 */
const REPLAY_DAYS = 120;

interface Now {
  readonly store: StoreQueries;
  readonly siteId: string;
  readonly nowUtcMs: number;
}

/** Everything that a plan depends on as it is kept now. */
export async function planInputNow(now: Now, weather: Weather): Promise<PlanInput> {
  return (await planBasisNow(now, weather)).planInput;
}

/** The same, with what has to be noted so that it can be put together again later. */
export async function planBasisNow(
  { store, siteId, nowUtcMs }: Now,
  weather: Weather,
): Promise<{ readonly planInput: PlanInput; readonly basis: PlanBasis }> {
  const journalSeq = await store.journal.latestSeq(siteId);
  const journal = await store.journal.list(siteId, journalSeq);
  // Changes are told against what the grower was last told, not against plans made in between.
  const previous = await store.plans.latestStored(siteId, ["morning", "amendment"]);
  const past = await store.weather.past(siteId, nowUtcMs - REPLAY_DAYS * DAY_MS);
  const collection = await store.collection(siteId);
  const settings = await store.settings.get(siteId);
  const known = { collection, settings, journal, weather: withPast(weather, past), nowUtcMs };
  return {
    planInput: await planInputOf(store, known, previous),
    basis: { collection, settings, journalSeq, previousPlanId: previous?.id ?? null },
  };
}

/**
 * What a kept plan was made from, as it was known then: later entries, corrected weather and changed pots are left out.
 * @returns null for a plan whose forecast is no longer kept, or that is older than this memory
 */
export async function planInputThen(store: StoreQueries, made: StoredPlan): Promise<PlanInput | null> {
  const { id, weatherPullId, madeUtcMs: nowUtcMs } = made;
  const basis = await store.planInputs.get(id);
  const weather = weatherPullId === null ? null : await store.weather.pull(weatherPullId);
  if (!basis || !weather || weatherPullId === null) return null;
  const { collection, settings, journalSeq, previousPlanId } = basis;
  const siteId = collection.site.id;
  const past = await store.weather.past(siteId, nowUtcMs - REPLAY_DAYS * DAY_MS, weatherPullId);
  const previous = previousPlanId === null ? null : await store.plans.get(previousPlanId);
  const journal = await store.journal.list(siteId, journalSeq);
  const known = { collection, settings, journal, weather: withPast(weather, past), nowUtcMs };
  return planInputOf(store, known, previous);
}

async function planInputOf(
  store: StoreQueries,
  known: Pick<PlanInput, "collection" | "settings" | "journal" | "weather" | "nowUtcMs">,
  previous: StoredPlan | null,
): Promise<PlanInput> {
  return {
    ...known,
    ...(previous ? { previous: previous.plan } : {}),
    ...(await toldBefore(store, { ...known, previous })),
  };
}

/** Days of mornings that are scored. Chosen by us: a season, so that what is told of it holds for the one at hand. */
const SCORED_DAYS = 90;

/** What earlier mornings told, for the first plan of a day to score; the others carry its score on. */
async function toldBefore(
  store: Pick<StoreQueries, "plans">,
  now: {
    collection: Collection;
    journal: readonly JournalEntry[];
    nowUtcMs: number;
    previous: StoredPlan | null;
  },
): Promise<Pick<PlanInput, "told">> {
  const { site } = now.collection;
  const beforeDay = calendarDay(now.nowUtcMs, site.zone);
  if (now.previous?.plan.forDay === beforeDay) return {};
  const fromDay = calendarDay(now.nowUtcMs - SCORED_DAYS * DAY_MS, site.zone);
  const { entries } = settleEntries(now.journal);
  const felt = entries.flatMap(({ potId, body }) => (body.kind === "checked" && potId ? [potId] : []));
  return { told: await store.plans.told(site.id, { fromDay, beforeDay, potIds: new Set(felt) }) };
}
