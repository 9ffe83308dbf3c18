import { isOpen } from "./back-off.ts";
import type { FeedState } from "./feed-state.ts";

export type FeedName = "forecast" | "fallback";

/** What to ask now, in order, until one answers; or why nothing is asked, and until when. */
export type FeedChoice =
  | { readonly ask: readonly FeedName[] }
  | { readonly ask: readonly []; readonly because: "not-due" | "resting"; readonly untilUtcMs: number };

/**
 * How long the primary must have been failing before the fallback is asked. Chosen by us because most outages are
 * over by then, and a forecast two hours old is better than the fallback's, which tells no sun and no spread.
 */
export const FALLBACK_AFTER_MS = 2 * 3_600_000;

/**
 * Which feed to ask. The primary always comes first when its rest is over, so the fallback is left with the first
 * good answer of the primary. A house that never had a forecast does not wait to use the fallback.
 */
export function chooseFeed(input: {
  readonly state: FeedState;
  readonly nowUtcMs: number;
  /** The fallback is set up: it has an address and a contact to give. */
  readonly fallbackReady: boolean;
}): FeedChoice {
  const { state, nowUtcMs, fallbackReady } = input;
  const primaryOpen = isOpen(state.forecast, nowUtcMs);
  const fallbackDue = fallbackReady && hasFailedLong(state, nowUtcMs);
  const fallbackOpen = fallbackDue && isOpen(state.fallback, nowUtcMs);
  const ask: FeedName[] = [];
  if (primaryOpen) ask.push("forecast");
  if (fallbackOpen) ask.push("fallback");
  if (ask.length > 0) return { ask };
  const untilUtcMs = fallbackDue
    ? Math.min(state.forecast.notBeforeUtcMs, state.fallback.notBeforeUtcMs)
    : state.forecast.notBeforeUtcMs;
  const served = state.forecast.failuresInRow === 0 || (fallbackDue && state.fallback.failuresInRow === 0);
  return { ask: [], because: served ? "not-due" : "resting", untilUtcMs };
}

function hasFailedLong({ forecast }: FeedState, nowUtcMs: number): boolean {
  if (forecast.lastGoodUtcMs === null) return true;
  return forecast.failingSinceUtcMs !== null && nowUtcMs - forecast.failingSinceUtcMs >= FALLBACK_AFTER_MS;
}
