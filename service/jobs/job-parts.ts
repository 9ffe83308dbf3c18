import type { Plan } from "../../core/plan/plan.ts";
import type { PlanInput } from "../case/plan-input.ts";
import type { FeedSettings } from "../feed/feed-settings.ts";
import type { WeatherAnswer, WeatherAsk } from "../feed/weather-ask.ts";
import type { Log } from "../log.ts";
import type { Post } from "../notify/post.ts";
import type { Store } from "../store/open-store.ts";
import type { HouseWords } from "../words/house-words.ts";
import type { Tally } from "./tally.ts";

/** What the jobs work with; main and tests put it together. */
export interface JobParts {
  readonly store: Store;
  readonly feed: FeedSettings;
  readonly words: HouseWords;
  readonly post: Post;
  readonly log: Log;
  readonly tally: Tally;
  readonly now: () => number;
  readonly briefAtHour: number;
  readonly keep: { readonly backupCount: number; readonly weatherDays: number; readonly planDays: number };
  readonly backupDir: string | null;
  fetchWeather(ask: WeatherAsk): Promise<WeatherAnswer>;
  /** Core's own when left out. */
  plan?(input: PlanInput): Plan;
}
