import { plan as planFromCore } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Outcome, Problem } from "../../core/problem.ts";
import type { Weather } from "../../core/weather/weather.ts";
import type { PlanInput } from "../case/plan-input.ts";
import type { FeedSettings } from "../feed/feed-settings.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { fetchWeather } from "../feed/fetch-weather.ts";
import { pullDueUtcMs } from "../feed/pull-due.ts";
import type { WeatherAnswer, WeatherAsk } from "../feed/weather-ask.ts";
import type { Store } from "../store/open-store.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { withPast } from "../store/past-hours.ts";
import type { StoreQueries } from "../store/store-queries.ts";
import type { PlanKind } from "../store/tables.ts";
import { pullWeather } from "./pull-weather.ts";

export interface MakePlanInput {
  readonly store: Store;
  readonly siteId: string;
  readonly nowUtcMs: number;
  readonly feed: FeedSettings;
  readonly late?: boolean;
  fetchWeather?(ask: WeatherAsk): Promise<WeatherAnswer>;
  /** Core's own when left out. */
  readonly plan?: (input: PlanInput) => Plan;
  /** What the plan is kept as, and with what; a plan that somebody asked for when left out. */
  settle?(made: { readonly plan: Plan; readonly input: PlanInput }): Promise<Settled>;
}

export interface Settled {
  readonly kind: PlanKind;
  /** Kept in the same transaction as the plan, so that neither is ever there without the other. */
  readonly messages: readonly NewMessage[];
  /** Further writes of that transaction. */
  alongside?(step: StoreQueries): Promise<void>;
}

export interface PlanMade {
  readonly plan: Plan;
  readonly weather: Weather;
  /** Null where the day's morning was there already, so that nothing was added. */
  readonly planId: number | null;
  /** Why the feed gave nothing new, when it was asked. */
  readonly feedProblems: readonly Problem[];
}

const ASKED: Settled = { kind: "asked", messages: [] };
const DAY_MS = 86_400_000;
/**
 * How far back the journal is replayed over kept weather. Chosen by us: a pot forgets its water in weeks and no
 * aftercare is longer, while each day costs time at every plan.
 */
const REPLAY_DAYS = 120;

/**
 * Pulls the weather if that is due, plans from what is known, and keeps the plan with its messages in one transaction.
 * When the feed gives nothing, the last good weather is used with its true age.
 * @returns problems "no-such-site" and "no-weather-yet", the latter with the feed's own problems
 */
export async function makePlanNow(input: MakePlanInput): Promise<Outcome<PlanMade>> {
  const { store, siteId } = input;
  const site = await store.sites.get(siteId);
  if (!site) return { ok: false, problems: [{ code: "no-such-site", path: ["siteId"], data: { siteId } }] };
  const feedProblems = await pullIfDue(input);
  const known = await store.weather.latest(siteId);
  if (!known)
    return { ok: false, problems: [{ code: "no-weather-yet", path: ["weather"] }, ...feedProblems] };
  const { pullId, ...weather } = known;
  const planInput = await planInputNow(input, weather);
  const plan = (input.plan ?? planFromCore)(planInput);
  const planId = await keep(input, { plan, planInput, pullId });
  return { ok: true, value: { plan, weather: planInput.weather, planId, feedProblems } };
}

async function pullIfDue(input: MakePlanInput): Promise<readonly Problem[]> {
  const { store, siteId, nowUtcMs, feed } = input;
  const site = await store.sites.get(siteId);
  if (!site || nowUtcMs < pullDueUtcMs(readFeedState(await store.feedState.get(siteId)), site)) return [];
  const pulled = await pullWeather({
    store,
    site,
    feed,
    nowUtcMs,
    fetchWeather: input.fetchWeather ?? fetchWeather,
  });
  return pulled.ok ? [] : pulled.problems;
}

/** Everything that a plan depends on as it is kept now. */
export async function planInputNow(
  { store, siteId, nowUtcMs }: Pick<MakePlanInput, "store" | "siteId" | "nowUtcMs">,
  weather: Weather,
): Promise<PlanInput> {
  const journal = await store.journal.list(siteId);
  // Changes are told against what the grower was last told, not against plans made in between.
  const previous = (await store.plans.latestStored(siteId, ["morning", "amendment"]))?.plan;
  const past = await store.weather.past(siteId, nowUtcMs - REPLAY_DAYS * DAY_MS);
  return {
    collection: await store.collection(siteId),
    journal,
    weather: withPast(weather, past),
    nowUtcMs,
    settings: await store.settings.get(siteId),
    ...(previous ? { previous } : {}),
  };
}

async function keep(
  input: MakePlanInput,
  { plan, planInput, pullId }: { plan: Plan; planInput: PlanInput; pullId: number },
): Promise<number | null> {
  const { store, nowUtcMs, late = false } = input;
  const settled = (await input.settle?.({ plan, input: planInput })) ?? ASKED;
  return store.together(async (step) => {
    const how = { kind: settled.kind, madeUtcMs: nowUtcMs, late, weatherPullId: pullId };
    const planId = await step.plans.save(plan, how);
    if (planId === null) return null;
    await step.outbox.add(settled.messages.map((message) => ({ ...message, planId })));
    await settled.alongside?.(step);
    return planId;
  });
}
