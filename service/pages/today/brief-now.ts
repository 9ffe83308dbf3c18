import { briefOf } from "../../brief/brief.ts";
import { briefText } from "../../brief/brief-text.ts";
import { keptTiming } from "../../jobs/kept-timing.ts";
import type { PageContext } from "../page-context.ts";
import type { SiteNow } from "../site-now.ts";

/** The brief as plain text in the words of the house; null without a plan. */
export async function briefNow(
  { store, briefAtHour, words }: PageContext,
  { plan, collection }: Pick<SiteNow, "plan" | "collection">,
): Promise<string | null> {
  if (!plan) return null;
  const timing = await keptTiming(store, { plan, briefAtHour });
  return briefText(briefOf({ plan, collection, words, timing }));
}
