import type { Problem } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import type { FeedSettings } from "../feed/feed-settings.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { paidAhead } from "../feed/pull-weight.ts";
import type { WeatherAnswer, WeatherAsk } from "../feed/weather-ask.ts";
import type { Store } from "../store/open-store.ts";
import { faultNote } from "./fault-note.ts";

const DAY_MS = 86_400_000;
/** Days asked for at the first pull: as long as the longest aftercare. Chosen by us. */
const FIRST_PAST_DAYS = 60;
/** Days asked for at least: the feed's newest past is still being corrected. */
const LEAST_PAST_DAYS = 2;
/** The primary feed reaches back no further. */
const MOST_PAST_DAYS = 92;

export interface PullInput {
  readonly store: Store;
  readonly site: Site;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
  fetchWeather(ask: WeatherAsk): Promise<WeatherAnswer>;
}

export type Pulled =
  | { readonly ok: true; readonly pullId: number; readonly notes: readonly Problem[] }
  | Failed;
type Failed = { readonly ok: false; readonly problems: readonly Problem[] };

/** Asks the feed once and keeps what it said, with what its manners must remember, in one transaction. */
export async function pullWeather(input: PullInput): Promise<Pulled> {
  const { store, site, feed, nowUtcMs } = input;
  const state = readFeedState(await store.feedState.get(site.id));
  const pastDays = await pastDaysToAsk(input);
  await store.feedState.put(site.id, paidAhead(state, { nowUtcMs, pastDays }));
  const answer = await input.fetchWeather({ site, feed, nowUtcMs, pastDays, state });
  return store.together(async (step) => {
    await step.feedState.put(site.id, answer.state);
    const pullId = answer.ok ? await step.weather.save(site.id, answer.value) : null;
    await step.runs.add({
      siteId: site.id,
      job: "pull",
      slot: "",
      startedUtcMs: nowUtcMs,
      endedUtcMs: nowUtcMs,
      outcome: answer.ok ? "done" : "failed",
      late: false,
      // After a good pull too: what it lacked, or why another feed had to stand in.
      detail: faultNote(answer.ok ? answer.notes : answer.problems),
    });
    return answer.ok && pullId !== null
      ? { ok: true, pullId, notes: answer.notes }
      : { ok: false, problems: answer.ok ? [] : answer.problems };
  });
}

/** Enough days to close the gap since the last hour that is known. */
async function pastDaysToAsk({ store, site, nowUtcMs }: PullInput): Promise<number> {
  const knownUntilUtcMs = await store.weather.pastKnownUntil(site.id);
  if (knownUntilUtcMs === null) return FIRST_PAST_DAYS;
  const gapDays = Math.ceil((nowUtcMs - knownUntilUtcMs) / DAY_MS);
  return Math.min(MOST_PAST_DAYS, Math.max(0, gapDays) + LEAST_PAST_DAYS);
}
