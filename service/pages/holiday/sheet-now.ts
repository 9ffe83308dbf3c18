import { calendarDay } from "../../../core/site/local-days.ts";
import type { Site } from "../../../core/site/site.ts";
import { type Sheet, sheetOf } from "../../brief/sheet.ts";
import type { Handover } from "../../store/handover.ts";
import type { Words } from "../../words/words.ts";
import type { PageContext } from "../page-context.ts";
import type { SiteNow } from "../site-now.ts";

/** The hand-overs that are not over, earliest first. */
export async function handoversAhead({ store, now }: PageContext, { zone }: Site): Promise<Handover[]> {
  const today = calendarDay(now(), zone);
  return (await store.choices.handovers()).filter(({ toDay }) => toDay >= today);
}

/** The sheet is for the hand-over that comes first; without one for every day that is reckoned. Null without a plan. */
export function sheetNow(
  { plan, collection }: Pick<SiteNow, "plan" | "collection">,
  { handovers: [first], words }: { handovers: readonly Handover[]; words: Words },
): Sheet | null {
  if (!plan) return null;
  const within = first && { fromDay: first.fromDay, toDay: first.toDay };
  return sheetOf({ plan, collection, words }, within);
}
