import type { Problem } from "../../core/problem.ts";
import type { MemberColumns } from "../../core/weather/weather.ts";
import { isOpen } from "./back-off.ts";
import { CREDIT } from "./credit.ts";
import { feedProblem } from "./feed-problem.ts";
import type { FeedState } from "./feed-state.ts";
import { noteBad, noteGood, pay } from "./line-outcome.ts";
import type { WantedHours } from "./open-meteo/parse-ensemble.ts";
import { pullEnsemble, pullForecast } from "./open-meteo/pull.ts";
import { ensembleWeight, forecastWeight } from "./pull-weight.ts";
import type { WeatherAnswer, WeatherAsk } from "./weather-ask.ts";

type Known = WeatherAsk & { readonly state: FeedState };

/** Forecast and, where it can be had, ensemble from the primary feed. */
export async function weatherFromPrimary(ask: Known): Promise<WeatherAnswer> {
  const { site, feed, nowUtcMs, pastDays } = ask;
  const paid = pay(ask.state, { nowUtcMs, weight: forecastWeight(pastDays), feed: "forecast" });
  if ("problem" in paid) return { ok: false, problems: [paid.problem], notes: [], state: ask.state };
  const forecast = await pullForecast({ point: site, feed, nowUtcMs, pastDays });
  const line = "forecast";
  if (!forecast.ok) {
    const state = noteBad(paid.state, { line, nowUtcMs, site, problems: forecast.problems });
    return { ...forecast, notes: [], state };
  }
  const { startUtcMs, hourCount, hours } = forecast.value;
  const known = { ...ask, state: noteGood(paid.state, { line, nowUtcMs }) };
  const { members, notes, state } = await membersFor(known, { startUtcMs, hourCount });
  const source = feed.demo === true ? "demo" : "primary";
  const origin = { source, fetchedUtcMs: nowUtcMs, credit: CREDIT[source] } as const;
  const value = { startUtcMs, hourCount, hours, members, origin };
  return { ok: true, value, notes: [...forecast.value.notes, ...notes], state };
}

interface Members {
  readonly members: MemberColumns | null;
  readonly notes: readonly Problem[];
  readonly state: FeedState;
}

/** A failing ensemble rests on its own, so that it neither holds up nor storms beside a good forecast. */
async function membersFor(ask: Known, want: WantedHours): Promise<Members> {
  const { site, feed, nowUtcMs, state } = ask;
  const without = (problem: Problem): Members => ({ members: null, notes: [problem], state });
  if (!isOpen(state.ensemble, nowUtcMs)) {
    const untilUtcMs = state.ensemble.notBeforeUtcMs;
    return without(feedProblem("feed-resting", { feed: "ensemble", untilUtcMs }));
  }
  const paid = pay(state, { nowUtcMs, weight: ensembleWeight(), feed: "ensemble" });
  if ("problem" in paid) return without(paid.problem);
  const line = "ensemble";
  const ensemble = await pullEnsemble({ point: site, feed, nowUtcMs, want });
  if (ensemble.ok) {
    return { members: ensemble.value, notes: [], state: noteGood(paid.state, { line, nowUtcMs }) };
  }
  const { problems } = ensemble;
  return { members: null, notes: problems, state: noteBad(paid.state, { line, nowUtcMs, site, problems }) };
}
