import { type FeedServer, startFeedServer } from "../../demo/feed-server.ts";
import { inventedWeather } from "../../demo/invented-weather.ts";
import type { InventedWeather } from "../../demo/invented-weather-type.ts";

const DAY_MS = 86_400_000;
const SEED = 20;

/** The stand-in feed under a clock that runs fast: one invented stretch, laid under whatever day it is. */
export async function startQuickFeed(nowUtcMs: () => number): Promise<FeedServer> {
  const first = inventedWeather(nowUtcMs(), SEED);
  const firstDay = Math.floor(nowUtcMs() / DAY_MS);
  const weatherAt = (_lat: number, _lon: number, atUtcMs: number): InventedWeather => {
    const days = Math.floor(atUtcMs / DAY_MS) - firstDay;
    return { ...first, startUtcMs: first.startUtcMs + days * DAY_MS };
  };
  return startFeedServer({ weatherAt, nowUtcMs });
}
