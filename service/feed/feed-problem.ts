import type { Problem } from "../../core/problem.ts";

/** Which call went wrong. */
export type FeedRole = "forecast" | "ensemble" | "places" | "elevation" | "fallback" | "archive";

/** What helps: nothing but time, a look at the network or at one setting, or word to the maintainers. */
export type NextStep = "wait" | "check-network" | "check-address" | "check-key" | "check-contact" | "report";

export type FeedCode = keyof typeof NEXT_STEP;

/** Every way a feed can fail, with what to do next. */
const NEXT_STEP = {
  "feed-refused": "check-network",
  "feed-unknown-host": "check-network",
  "feed-tls": "check-address",
  "feed-timeout": "wait",
  "feed-cut-short": "wait",
  "feed-broken-transport": "check-network",
  "feed-too-large": "report",
  "feed-bad-text": "report",
  "feed-bad-address": "check-address",
  "feed-redirected": "check-address",
  "feed-throttled": "wait",
  "feed-rejected": "report",
  "feed-denied": "check-key",
  "feed-not-found": "check-address",
  "feed-server-error": "wait",
  "feed-not-covered": "check-address",
  "feed-unexpected-status": "report",
  "feed-not-json": "wait",
  "feed-bad-shape": "report",
  "feed-no-hours": "report",
  "feed-wrong-time": "wait",
  "feed-no-temperature": "wait",
  "feed-no-elevation": "wait",
  "feed-no-members": "report",
  "feed-not-due": "wait",
  "feed-resting": "wait",
  "feed-budget-spent": "wait",
  "feed-no-contact": "check-contact",
  // Notes on an answer that is used all the same.
  "feed-column-missing": "wait",
  "feed-column-not-offered": "wait",
  "feed-column-length": "report",
  "feed-column-unit": "report",
  "feed-column-empty": "wait",
  "feed-column-values": "report",
  "feed-hours-twice": "report",
  "feed-hours-missing": "report",
  "feed-nan-repaired": "wait",
  "feed-coarse-tail": "wait",
  "feed-deprecated": "report",
} as const satisfies Record<string, NextStep>;

/** Every code that a feed's problem can have. */
export const FEED_CODES = Object.keys(NEXT_STEP) as readonly FeedCode[];

/** What usually helps; null for a code that is no feed's. */
export function nextStepOf(code: string): NextStep | null {
  return Object.hasOwn(NEXT_STEP, code) ? NEXT_STEP[code as FeedCode] : null;
}

/** A failure or a note, with `next` in its data unless the data name a better step. */
export function feedProblem(
  code: FeedCode,
  data: Readonly<Record<string, unknown>> & { readonly feed: FeedRole },
  path: readonly (string | number)[] = [],
): Problem {
  return { code, path: ["feed", data.feed, ...path], data: { next: NEXT_STEP[code], ...data } };
}
