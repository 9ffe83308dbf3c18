import type { Outcome, Problem } from "../../../core/problem.ts";
import { HOUR_MS, type MemberColumns } from "../../../core/weather/weather.ts";
import { answerInText } from "../answer-in-text.ts";
import { type FeedRole, feedProblem } from "../feed-problem.ts";
import type { FeedSettings } from "../feed-settings.ts";
import { httpGet } from "../http-get.ts";
import { HourlyAnswer } from "./answer-schema.ts";
import { parseEnsemble, type WantedHours } from "./parse-ensemble.ts";
import { type ParsedHours, parseForecast } from "./parse-forecast.ts";
import { type AskedPoint, ensembleAddress, forecastAddress } from "./request.ts";

export interface Ask {
  readonly point: AskedPoint;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
}

/** The forecast from the primary feed, on its own hour axis, which holds the present hour. */
export async function pullForecast(ask: Ask & { readonly pastDays: number }): Promise<Outcome<ParsedHours>> {
  const answer = await hourlyAnswer(ask, { url: forecastAddress(ask.feed, ask), feedRole: "forecast" });
  if (!answer.ok) return answer;
  const parsed = parseForecast(answer.value);
  if (!parsed.ok) return { ok: false, problems: [...parsed.problems, ...answer.notes] };
  const stray = strayTime(parsed.value, ask.nowUtcMs);
  if (stray !== null) return { ok: false, problems: [stray] };
  return { ok: true, value: { ...parsed.value, notes: [...answer.notes, ...parsed.value.notes] } };
}

/** The members of the ensemble, on the axis of the forecast that they accompany. */
export async function pullEnsemble(
  ask: Ask & { readonly want: WantedHours },
): Promise<Outcome<MemberColumns>> {
  const url = ensembleAddress(ask.feed, ask.point);
  const answer = await hourlyAnswer(ask, { url, feedRole: "ensemble" });
  if (!answer.ok) return answer;
  return parseEnsemble(answer.value, ask.want);
}

async function hourlyAnswer(
  ask: Ask,
  call: { url: URL | null; feedRole: FeedRole },
): Promise<Outcome<HourlyAnswer> & { readonly notes: readonly Problem[] }> {
  const { url, feedRole } = call;
  if (url === null) {
    return { ok: false, problems: [feedProblem("feed-bad-address", { feed: feedRole })], notes: [] };
  }
  const got = await httpGet({ feedRole, url, headers: {}, feed: ask.feed, nowUtcMs: ask.nowUtcMs });
  if (!got.ok) return { ...got, notes: [] };
  return answerInText(got.value, { schema: HourlyAnswer, feed: feedRole });
}

/** A forecast for another time is none: last year's cache, or a server whose clock is wrong. */
function strayTime(hours: ParsedHours, nowUtcMs: number): Problem | null {
  const endUtcMs = hours.startUtcMs + hours.hourCount * HOUR_MS;
  if (nowUtcMs >= hours.startUtcMs && nowUtcMs < endUtcMs) return null;
  return feedProblem("feed-wrong-time", { feed: "forecast", fromUtcMs: hours.startUtcMs, toUtcMs: endUtcMs });
}
