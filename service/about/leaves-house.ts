import type { FeedSettings } from "../feed/feed-settings.ts";

/** What goes out to one host, as a code for which the catalogue has the sentence. */
export interface Outgoing {
  readonly what:
    | "forecast"
    | "ensemble"
    | "places"
    | "elevation"
    | "fallback"
    | "archive"
    | "archive-forecasts";
  readonly host: string;
}

/** Every host outside that the weather side of the house may call with these settings, and for what. */
export function outgoingToFeeds(feed: FeedSettings): Outgoing[] {
  const all: readonly (readonly [Outgoing["what"], string])[] = [
    ["forecast", feed.forecastUrl],
    ["ensemble", feed.ensembleUrl],
    ["places", feed.geocodingUrl],
    ["elevation", feed.elevationUrl],
    // Without a contact to give it is never asked.
    ["fallback", feed.contact === undefined ? "" : feed.fallbackUrl],
    ["archive", feed.archiveUrl],
    ["archive-forecasts", feed.previousRunsUrl],
  ];
  return all.flatMap(([what, url]) => (URL.canParse(url) ? [{ what, host: new URL(url).host }] : []));
}
