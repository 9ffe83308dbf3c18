import type { Outcome, Problem } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import type { Weather } from "../../core/weather/weather.ts";
import type { FeedSettings } from "./feed-settings.ts";
import type { FeedState } from "./feed-state.ts";

export interface WeatherAsk {
  readonly site: Site;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
  /** Days before today (UTC) that are wanted; the fallback has none. */
  readonly pastDays: number;
  /** As given back by the last call for this site. Left out, nothing is known and nothing is held back. */
  readonly state?: FeedState;
}

export type WeatherAnswer = Outcome<Weather> & {
  /** What was wanting in an answer that is used all the same, and why a feed asked earlier gave none. */
  readonly notes: readonly Problem[];
  /** To be kept with the site and given back with the next call. */
  readonly state: FeedState;
};
