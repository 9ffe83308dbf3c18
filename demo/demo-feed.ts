import type { FeedSettings } from "../service/feed/feed-settings.ts";
import { DEFAULT_FEED_SETTINGS } from "../service/feed/feed-settings.ts";
import { type FeedServer, startFeedServer } from "./feed-server.ts";
import { HARBOUR_SITE } from "./harbour-site.ts";
import { inventedWeather } from "./invented-weather.ts";
import type { InventedWeather } from "./invented-weather-type.ts";

/** The seed of everything invented: chosen by us because its members tell the story well. */
const SEED = 20;

/** The stand-in feed with the demonstration's weather, and the settings by which the service asks it. */
export async function startDemoFeed(nowUtcMs: number): Promise<{ server: FeedServer; feed: FeedSettings }> {
  const known = new Map<string, InventedWeather>();
  const weatherAt = (latDeg: number, lonDeg: number): InventedWeather => {
    const key = `${latDeg} ${lonDeg}`;
    const elevationM = HARBOUR_SITE.elevationM;
    const weather = known.get(key) ?? inventedWeather(nowUtcMs, SEED, { latDeg, lonDeg, elevationM });
    known.set(key, weather);
    return weather;
  };
  const aheadMs = nowUtcMs - Date.now();
  const clock = () => Date.now() + aheadMs;
  const server = await startFeedServer({ weatherAt, nowUtcMs: clock, places: [HARBOUR] });
  return { server, feed: feedAt(server.url) };
}

const HARBOUR = {
  id: 1,
  name: "Varrowhaven",
  latDeg: HARBOUR_SITE.latDeg,
  lonDeg: HARBOUR_SITE.lonDeg,
  elevationM: HARBOUR_SITE.elevationM,
  zone: HARBOUR_SITE.zone,
  country: "An island on no map",
  countryCode: "XX",
  region: "The harbour",
};

function feedAt(url: string): FeedSettings {
  return {
    ...DEFAULT_FEED_SETTINGS,
    forecastUrl: url,
    ensembleUrl: url,
    geocodingUrl: url,
    elevationUrl: url,
    fallbackUrl: url,
    contact: "demo@localhost",
    demo: true,
  };
}
