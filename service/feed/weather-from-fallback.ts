import { CREDIT } from "./credit.ts";
import type { FeedState } from "./feed-state.ts";
import { noteBad, noteGood, pay } from "./line-outcome.ts";
import { pullFallback } from "./met-norway/pull.ts";
import type { WeatherAnswer, WeatherAsk } from "./weather-ask.ts";

/** Faults of the body itself: it is let go, or "not modified" would bring it back for ever. */
const USELESS_BODY = new Set([
  "feed-not-json",
  "feed-bad-shape",
  "feed-no-hours",
  "feed-no-temperature",
  "feed-wrong-time",
]);

/** Weather from the fallback feed: days ahead only, no radiation, no members. */
export async function weatherFromFallback(
  ask: WeatherAsk & { readonly state: FeedState },
): Promise<WeatherAnswer> {
  const { site, feed, nowUtcMs } = ask;
  const line = "fallback";
  const paid = pay(ask.state, { nowUtcMs, weight: 1, feed: line });
  if ("problem" in paid) return { ok: false, problems: [paid.problem], notes: [], state: ask.state };
  const answer = await pullFallback({ point: site, feed, nowUtcMs, kept: ask.state.kept });
  if (!answer.ok) {
    const { problems } = answer;
    const state = noteBad(paid.state, { line, nowUtcMs, site, problems });
    const kept = problems.some((problem) => USELESS_BODY.has(problem.code)) ? null : state.kept;
    return { ...answer, notes: [], state: { ...state, kept } };
  }
  const { startUtcMs, hourCount, hours, coarseFromUtcMs, notes, kept } = answer.value;
  const origin = {
    source: line,
    fetchedUtcMs: kept.fetchedUtcMs,
    credit: feed.demo === true ? CREDIT.demo : CREDIT.fallback,
    ...(coarseFromUtcMs === null ? {} : { coarseFromUtcMs }),
  } as const;
  const state = { ...noteGood(paid.state, { line, nowUtcMs }), kept };
  return { ok: true, value: { startUtcMs, hourCount, hours, members: null, origin }, notes, state };
}
