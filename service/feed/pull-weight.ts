import { callWeight, DAILY_WEIGHT_BUDGET, spend } from "./day-budget.ts";
import type { FeedState } from "./feed-state.ts";
import { FORECAST_DAYS, pastDaysAsked } from "./open-meteo/request.ts";
import { FORECAST_VARIABLES, MEMBER_VARIABLES } from "./open-meteo/variables.ts";

const DAY_MS = 86_400_000;
/** Taken for the budget whatever the model; the largest in common use. */
const ASSUMED_MEMBERS = 51;

export function forecastWeight(pastDays: number): number {
  const days = pastDaysAsked(pastDays) + FORECAST_DAYS;
  return callWeight({ variables: Object.keys(FORECAST_VARIABLES).length, members: 1, days });
}

export function ensembleWeight(): number {
  const variables = Object.keys(MEMBER_VARIABLES).length;
  return callWeight({ variables, members: ASSUMED_MEMBERS, days: FORECAST_DAYS });
}

/**
 * The state with a whole pull paid for, to be kept before the pull is made: a service that dies in the middle of its
 * pulls and is started again and again must run out of budget, not of patience on the other side.
 */
export function paidAhead(state: FeedState, ask: { nowUtcMs: number; pastDays: number }): FeedState {
  const weight = forecastWeight(ask.pastDays) + ensembleWeight();
  const { nowUtcMs } = ask;
  // Too little for a whole pull may still be enough for a part of one, so nothing is left of it.
  const rest = { utcDay: Math.floor(nowUtcMs / DAY_MS), spentCalls: DAILY_WEIGHT_BUDGET };
  return { ...state, budget: spend(state.budget, { nowUtcMs, weight }) ?? rest };
}
