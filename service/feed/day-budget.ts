import type { FeedState } from "./feed-state.ts";

const DAY_MS = 86_400_000;

/**
 * Weighted calls that a site may spend in a UTC day. Chosen by us: eight pulls with an ensemble of 51 members take
 * about 250; the primary feed allows an address 10,000.
 */
export const DAILY_WEIGHT_BUDGET = 1000;

/** Weight of a call as the primary feed counts it: one for each ten variables over two weeks, a member being one. */
export function callWeight(call: { variables: number; members: number; days: number }): number {
  const perTen = (call.variables * call.members) / 10;
  return Math.max(1, perTen, (perTen * call.days) / 14);
}

/** The budget with the call taken from it; null when the day has too little left and the call must not be made. */
export function spend(
  budget: FeedState["budget"],
  call: { nowUtcMs: number; weight: number },
): FeedState["budget"] | null {
  const utcDay = Math.floor(call.nowUtcMs / DAY_MS);
  const spentCalls = (budget.utcDay === utcDay ? budget.spentCalls : 0) + call.weight;
  return spentCalls > DAILY_WEIGHT_BUDGET ? null : { utcDay, spentCalls };
}
