import type { PlanInput } from "../core/plan/make-plan.ts";
import { DEFAULT_SETTINGS } from "../core/plan/settings.ts";
import type { Outcome } from "../core/problem.ts";
import { fetchWeather } from "../service/feed/fetch-weather.ts";
import { startDemoFeed } from "./demo-feed.ts";
import { demoCollection } from "./harbour.ts";
import { demoJournal } from "./harbour-journal.ts";

/** Past weather that the diary needs: it begins some six weeks ago. */
const PAST_DAYS = 42;

/** The demonstration as one case, its weather pulled over HTTP like any other. */
export async function demoCase(nowUtcMs: number): Promise<Outcome<PlanInput>> {
  const { server, feed } = await startDemoFeed(nowUtcMs);
  try {
    const weather = await fetchWeather({ site: demoCollection.site, feed, nowUtcMs, pastDays: PAST_DAYS });
    if (!weather.ok) return weather;
    const journal = demoJournal(nowUtcMs);
    return {
      ok: true,
      value: {
        collection: demoCollection,
        journal,
        weather: weather.value,
        nowUtcMs,
        settings: DEFAULT_SETTINGS,
      },
    };
  } finally {
    await server.close();
  }
}
