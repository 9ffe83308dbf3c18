import type { Plan } from "../../core/plan/plan.ts";
import { briefOf } from "../../service/brief/brief.ts";
import { briefText } from "../../service/brief/brief-text.ts";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { createApp } from "../../service/pages/app.tsx";
import { wordsFor } from "../../service/words/words.ts";
import { stockedStore } from "../service/pages/stocked-store.ts";
import { caseOf, planOf, type Scenario } from "./scenario.ts";

/** A morning as a grower meets it: the brief, and any page of a house that holds it. */
export interface AskedHouse {
  readonly plan: Plan;
  /** The brief as text, in one line. */
  readonly brief: string;
  /** What stands on a page, without its marks, in one line. */
  page(address: string): Promise<string>;
}

type Morning = Omit<Scenario, "situation" | "why" | "expected">;

export async function askedHouse(morning: Morning): Promise<AskedHouse> {
  const input = caseOf({ ...morning, situation: "", why: "", expected: {} });
  const { collection, journal, weather, nowUtcMs } = input;
  const plan = planOf(input);
  const store = await stockedStore({ collection, journal, weather, plan });
  await store.settings.put(collection.site.id, input.settings);
  const app = createApp({
    store,
    feed: DEFAULT_FEED_SETTINGS,
    now: () => nowUtcMs,
    replan: async () => null,
  });
  const words = wordsFor("en", "metric");
  return {
    plan,
    brief: inOneLine(briefText(briefOf({ plan, collection, words }))),
    page: async (address) => inOneLine(withoutMarks(await (await app.request(address)).text())),
  };
}

function withoutMarks(html: string): string {
  return html
    .replace(/<svg.*?<\/svg>/gs, " ")
    .replace(/<[^>]+>/g, " ")
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");
}

function inOneLine(text: string): string {
  return text.replaceAll("\u00a0", " ").replace(/\s+/g, " ");
}
