import type { Problem } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import { afterBad, afterGood } from "./back-off.ts";
import { spend } from "./day-budget.ts";
import { type FeedRole, feedProblem } from "./feed-problem.ts";
import type { FeedState } from "./feed-state.ts";
import { jitterFrac } from "./jitter.ts";

type LineName = "forecast" | "ensemble" | "fallback";
const DAY_MS = 86_400_000;

/** The state after a good call on a line. */
export function noteGood(state: FeedState, told: { line: LineName; nowUtcMs: number }): FeedState {
  return { ...state, [told.line]: afterGood(told.nowUtcMs) };
}

/** The state after a failed call on a line. */
export function noteBad(
  state: FeedState,
  told: { line: LineName; nowUtcMs: number; site: Site; problems: readonly Problem[] },
): FeedState {
  const { line, nowUtcMs, site } = told;
  const problem = told.problems[0] ?? { code: "feed-unknown", path: [] };
  // Failing calls that were never made need no longer rest than the day that refused them.
  if (problem.code === "feed-budget-spent") return state;
  const jitter = jitterFrac(site.id, site.latDeg, site.lonDeg, line, state[line].failuresInRow);
  return { ...state, [line]: afterBad(state[line], { nowUtcMs, jitterFrac: jitter, problem }) };
}

/** The state with the call paid for, or the problem that the day's budget cannot pay it. */
export function pay(
  state: FeedState,
  call: { nowUtcMs: number; weight: number; feed: FeedRole },
): { readonly state: FeedState } | { readonly problem: Problem } {
  const budget = spend(state.budget, call);
  if (budget !== null) return { state: { ...state, budget } };
  const untilUtcMs = (Math.floor(call.nowUtcMs / DAY_MS) + 1) * DAY_MS;
  return { problem: feedProblem("feed-budget-spent", { feed: call.feed, untilUtcMs }) };
}
