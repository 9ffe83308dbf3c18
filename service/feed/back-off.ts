import type { Problem } from "../../core/problem.ts";
import type { LineState } from "./feed-state.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

/** First wait after a failure; doubles with each further one. Chosen by us: most resets are over in minutes. */
const FIRST_WAIT_MS = 2 * MINUTE_MS;
/** Longest wait, so that a feed that is back is found within the hour. Chosen by us. */
const LONGEST_WAIT_MS = HOUR_MS;
/** Share of a wait by which it is stretched, so that houses that failed together do not come back together. */
const JITTER_FRAC = 0.5;
/** Least time between good calls: the primary's models are renewed hourly at best. */
const GOOD_GAP_MS = HOUR_MS;

/** What goes wrong again in the same way until somebody changes something. */
const WILL_NOT_MEND = new Set([
  "feed-rejected",
  "feed-denied",
  "feed-not-found",
  "feed-bad-address",
  "feed-tls",
]);

/** The line after a good call. */
export function afterGood(nowUtcMs: number): LineState {
  return {
    failuresInRow: 0,
    failingSinceUtcMs: null,
    lastGoodUtcMs: nowUtcMs,
    notBeforeUtcMs: nowUtcMs + GOOD_GAP_MS,
  };
}

/**
 * The line after a failed call, rested for a while that grows from two minutes to an hour.
 *
 * @param told.jitterFrac 0 to 1, from `jitterFrac`
 */
export function afterBad(
  line: LineState,
  told: { nowUtcMs: number; jitterFrac: number; problem: Problem },
): LineState {
  const { nowUtcMs, jitterFrac, problem } = told;
  const doubledMs = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** Math.min(line.failuresInRow, 10));
  const ownMs = WILL_NOT_MEND.has(problem.code) ? LONGEST_WAIT_MS : doubledMs;
  const waitMs = Math.max(ownMs * (1 + JITTER_FRAC * jitterFrac), askedWaitMs(told));
  return {
    failuresInRow: line.failuresInRow + 1,
    failingSinceUtcMs: line.failingSinceUtcMs ?? nowUtcMs,
    lastGoodUtcMs: line.lastGoodUtcMs,
    notBeforeUtcMs: nowUtcMs + Math.round(waitMs),
  };
}

/** Whether the line may be tried. A wait longer than any we set means that the clock was put back: try. */
export function isOpen(line: LineState, nowUtcMs: number): boolean {
  return nowUtcMs >= line.notBeforeUtcMs || line.notBeforeUtcMs - nowUtcMs > 2 * DAY_MS;
}

/** What the feed asked for itself: seconds in a header, or words that name the counter that is full. */
function askedWaitMs(told: { nowUtcMs: number; jitterFrac: number; problem: Problem }): number {
  const { code, data = {} } = told.problem;
  if (code !== "feed-throttled" && code !== "feed-server-error") return 0;
  const spreadMs = told.jitterFrac * 10 * MINUTE_MS;
  if (typeof data.retryAfterS === "number") return Math.min(data.retryAfterS * 1000, DAY_MS) + spreadMs;
  const reason = typeof data.reason === "string" ? data.reason : "";
  // The counters there are cleared with the wall clock, in UTC.
  if (/daily|monthly/i.test(reason)) return DAY_MS - (told.nowUtcMs % DAY_MS) + spreadMs;
  if (/hourly/i.test(reason)) return HOUR_MS - (told.nowUtcMs % HOUR_MS) + spreadMs;
  return 0;
}
