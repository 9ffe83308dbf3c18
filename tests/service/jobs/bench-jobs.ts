import type { Plan } from "../../../core/plan/plan.ts";
import type { PlanInput } from "../../../service/case/plan-input.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { INITIAL_FEED_STATE } from "../../../service/feed/feed-state.ts";
import { noteBad, noteGood } from "../../../service/feed/line-outcome.ts";
import type { WeatherAnswer, WeatherAsk } from "../../../service/feed/weather-ask.ts";
import type { JobParts } from "../../../service/jobs/job-parts.ts";
import { newTally } from "../../../service/jobs/tally.ts";
import { houseWords } from "../../../service/words/house-words.ts";
import { fixedPost } from "../notify/fixed-post.ts";
import { barePlan } from "../store/bare-plan.ts";
import { fill } from "../store/bench.ts";
import { someWeather } from "../store/some-weather.ts";
import { emptyStore } from "../store/test-store.ts";

const HOUR_MS = 3_600_000;

/** A house with one site whose clock, feed, planner and post are in the test's hands. */
export async function house(over: Partial<JobParts> = {}) {
  const store = over.store ?? (await emptyStore());
  if ((await store.sites.list()).length === 0) await fill(store);
  const clock = { nowUtcMs: Date.parse("2031-05-02T03:30Z") };
  const feed = { isDown: false, asked: [] as WeatherAsk[] };
  const planned: PlanInput[] = [];
  const planner = { make: (input: PlanInput): Plan => barePlan({ nowUtcMs: input.nowUtcMs }) };
  const delivered: { id: string; subject: string; body: string }[] = [];
  const logged: Record<string, unknown>[] = [];
  const note = (fields: Record<string, unknown>) => void logged.push(fields);
  const words = over.words ?? houseWords({ locale: "en", units: "metric" });
  const parts: JobParts = {
    store,
    feed: DEFAULT_FEED_SETTINGS,
    words,
    post: fixedPost(
      [
        {
          name: "post",
          async deliver({ id, subject, body }) {
            delivered.push({ id, subject, body });
            return { ok: true };
          },
        },
      ],
      words,
    ),
    log: { debug: note, info: note, warn: note, error: note } as unknown as JobParts["log"],
    tally: newTally(),
    now: () => clock.nowUtcMs,
    briefAtHour: 5.5,
    keep: { backupCount: 2, weatherDays: 14, planDays: 400 },
    backupDir: null,
    fetchWeather: async (ask) => {
      feed.asked.push(ask);
      return answer(ask, feed.isDown);
    },
    plan: (input) => {
      planned.push(input);
      return planner.make(input);
    },
    ...over,
  };
  return { parts, store, clock, feed, planner, planned, delivered, logged };
}

/** Twelve hours gone by and a day ahead, with the feed's manners kept. */
function answer(ask: WeatherAsk, isDown: boolean): WeatherAnswer {
  const { nowUtcMs, site, state = INITIAL_FEED_STATE } = ask;
  if (isDown) {
    const problems = [{ code: "feed-refused", path: [] }];
    return {
      ok: false,
      problems,
      notes: [],
      state: noteBad(state, { line: "forecast", nowUtcMs, site, problems }),
    };
  }
  const startUtcMs = (Math.floor(nowUtcMs / HOUR_MS) - 12) * HOUR_MS;
  const value = someWeather({ startUtcMs, hourCount: 36, fetchedUtcMs: nowUtcMs });
  return { ok: true, value, notes: [], state: noteGood(state, { line: "forecast", nowUtcMs }) };
}
