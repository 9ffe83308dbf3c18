import type { Outcome, Problem } from "../../../core/problem.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { answerInText } from "../answer-in-text.ts";
import { callerWithContact } from "../caller.ts";
import { feedProblem } from "../feed-problem.ts";
import type { KeptAnswer } from "../feed-state.ts";
import { type GetAnswer, httpGet } from "../http-get.ts";
import type { Ask } from "../open-meteo/pull.ts";
import { FallbackAnswer } from "./answer-schema.ts";
import { type ParsedFallback, parseFallback } from "./parse-fallback.ts";
import { fallbackAddress } from "./request.ts";

export interface PulledFallback extends ParsedFallback {
  /** To be given back with the next ask. */
  readonly kept: KeptAnswer;
}

/** Without an Expires header the answer is taken to hold this long; half an hour is what the feed gives itself. */
const KEEPS_MS = 1_800_000;
/** An Expires further ahead than this is a fault of a clock. */
const LONGEST_KEEPS_MS = 6 * HOUR_MS;
const FEED = "fallback";

/**
 * The forecast from the fallback feed. The answer kept from before is used without a call until it expires, and then
 * renewed only if the feed has a newer one.
 */
export async function pullFallback(
  ask: Ask & { readonly kept: KeptAnswer | null },
): Promise<Outcome<PulledFallback>> {
  const { feed, point, nowUtcMs } = ask;
  const url = fallbackAddress(feed, point);
  const caller = callerWithContact(feed);
  if (url === null) return failed("feed-bad-address");
  if (caller === null) return failed("feed-no-contact");
  const kept = ask.kept?.address === url.href ? ask.kept : null;
  if (kept !== null && nowUtcMs < kept.expiresUtcMs) return readKept(kept, { nowUtcMs, host: url.host });
  const since = kept?.lastModified ?? null;
  const headers = { "user-agent": caller, ...(since === null ? {} : { "if-modified-since": since }) };
  const got = await httpGet({ feedRole: FEED, url, headers, feed, nowUtcMs });
  if (!got.ok) return got;
  const answer = got.value;
  const unchanged = answer.status === 304;
  if (unchanged && kept === null) return failed("feed-unexpected-status", { status: 304, host: url.host });
  const renewed: KeptAnswer = {
    address: url.href,
    text: unchanged ? kept!.text : answer.text,
    fetchedUtcMs: nowUtcMs,
    expiresUtcMs: expiryOf(answer, nowUtcMs),
    lastModified: answer.lastModified ?? (unchanged ? since : null),
  };
  const notes = answer.status === 203 ? [feedProblem("feed-deprecated", { feed: FEED, host: url.host })] : [];
  return readKept(renewed, { nowUtcMs, host: url.host, notes });
}

function readKept(
  kept: KeptAnswer,
  at: { nowUtcMs: number; host: string; notes?: readonly Problem[] },
): Outcome<PulledFallback> {
  const answer = answerInText({ text: kept.text, host: at.host }, { schema: FallbackAnswer, feed: FEED });
  if (!answer.ok) return answer;
  const parsed = parseFallback(answer.value, at.nowUtcMs);
  if (!parsed.ok) return parsed;
  const { startUtcMs, hourCount } = parsed.value;
  const endUtcMs = startUtcMs + hourCount * HOUR_MS;
  if (at.nowUtcMs < startUtcMs || at.nowUtcMs >= endUtcMs) {
    return failed("feed-wrong-time", { fromUtcMs: startUtcMs, toUtcMs: endUtcMs });
  }
  const notes = [...(at.notes ?? []), ...answer.notes, ...parsed.value.notes];
  return { ok: true, value: { ...parsed.value, notes, kept } };
}

function expiryOf(answer: GetAnswer, nowUtcMs: number): number {
  const told = answer.expires === null ? Number.NaN : Date.parse(answer.expires);
  const expiresUtcMs = Number.isNaN(told) ? nowUtcMs + KEEPS_MS : told;
  return Math.min(Math.max(expiresUtcMs, nowUtcMs), nowUtcMs + LONGEST_KEEPS_MS);
}

function failed(code: Parameters<typeof feedProblem>[0], data: Record<string, unknown> = {}) {
  return { ok: false as const, problems: [feedProblem(code, { feed: FEED, ...data })] };
}
