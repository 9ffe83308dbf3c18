import { DEFAULT_FEED_SETTINGS, type FeedSettings } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { asServed } from "./as-served.ts";
import { postOf } from "./post-of.ts";
import { type Stock, stockedStore } from "./stocked-store.ts";

export const NOW_UTC_MS = Date.parse("2027-05-12T05:00Z");

/** Pages over a store in memory, asked as a browser asks. */
export async function houseOf(stock: Stock = {}, feed: Partial<FeedSettings> = {}) {
  const store = await stockedStore(stock);
  const planned: string[] = [];
  const app = asServed(
    createApp({
      store,
      feed: { ...DEFAULT_FEED_SETTINGS, ...feed },
      now: () => NOW_UTC_MS,
      replan: async (siteId) => planned.push(siteId),
    }),
  );
  const get = async (address: string) => {
    const answer = await app.request(address);
    return { status: answer.status, text: plain(await answer.text()) };
  };
  const send = async (address: string, fields: Record<string, string> | [string, string][]) => {
    const answer = await app.request(address, postOf(fields));
    return { status: answer.status, to: answer.headers.get("location"), text: plain(await answer.text()) };
  };
  return { store, planned, get, send };
}

/** As a reader sees it: spaces that do not break are spaces, and marks are not written out. */
function plain(text: string): string {
  return text.replaceAll("\u00a0", " ").replaceAll("&#39;", "'").replaceAll("&amp;", "&");
}
