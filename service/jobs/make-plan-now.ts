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
import type { PlanBasis } from "../store/plan-inputs-store.ts";
import type { StoreQueries } from "../store/store-queries.ts";
import type { PlanKind } from "../store/tables.ts";
import { planBasisNow } from "./plan-basis.ts";
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
  const { planInput, basis } = await planBasisNow(input, weather);
  const plan = (input.plan ?? planFromCore)(planInput);
  const planId = await keep(input, { plan, planInput, basis, pullId });
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

async function keep(
  input: MakePlanInput,
  made: { plan: Plan; planInput: PlanInput; basis: PlanBasis; pullId: number },
): Promise<number | null> {
  const { store, nowUtcMs, late = false } = input;
  const { plan, planInput, basis, pullId } = made;
  const settled = (await input.settle?.({ plan, input: planInput })) ?? ASKED;
  return store.together(async (step) => {
    const how = { kind: settled.kind, madeUtcMs: nowUtcMs, late, weatherPullId: pullId };
    const planId = await step.plans.save(plan, how);
    if (planId === null) return null;
    await step.planInputs.save(planId, basis);
    await step.outbox.add(settled.messages.map((message) => ({ ...message, planId })));
    await settled.alongside?.(step);
    return planId;
  });
}
