import { VERSION } from "../version.ts";
import type { FeedSettings } from "./feed-settings.ts";

/** How this program names itself to whoever it asks. */
export const CALLER = `leebench/${VERSION}`;

/** Says who calls and how to reach them, which the fallback's terms demand. Null without a contact: then do not call. */
export function callerWithContact(feed: FeedSettings): string | null {
  const contact = feed.contact?.replace(/[^\x20-\x7e]/g, "").trim();
  return contact ? `${CALLER} ${contact}` : null;
}
