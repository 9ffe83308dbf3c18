import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { weeklyOf, weeklyText } from "../brief/weekly.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { bareMessage } from "./bare-message.ts";
import type { Way } from "./way.ts";

const HOUR_MS = 3_600_000;
/** The days ahead are worth reading for two days; after that briefs have told more. Chosen by us. */
const KEEP_TRYING_HOURS = 47;
/** Mondays: ISO 8601 begins the week there. */
const WEEK_STARTS_ON = 1;

export interface AheadInput {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly ways: readonly Way[];
  readonly houseId: string;
  readonly nowUtcMs: number;
}

/** The look at the week, once a week with the first morning of it, for each way that wants it. */
export function weeklyMessages(input: AheadInput): NewMessage[] {
  const { plan, collection, ways } = input;
  if (new Date(`${plan.forDay}T12:00Z`).getUTCDay() !== WEEK_STARTS_ON) return [];
  return ways
    .filter(({ kinds }) => kinds.has("weekly"))
    .map((way) => {
      const weekly = weeklyOf({ plan, collection, words: way.words });
      return aheadMessage(input, { way, kind: "weekly", subject: weekly.title, text: weeklyText(weekly) });
    });
}

/** A message about the days ahead; it asks for no answer. */
export function aheadMessage(
  { plan, houseId, nowUtcMs }: AheadInput,
  { way, kind, subject, text }: { way: Way; kind: "weekly" | "sheet"; subject: string; text: string },
): NewMessage {
  const { siteId, forDay } = plan;
  const keepTryingUntilUtcMs = nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS;
  const about = { houseId, siteId, forDay, nowUtcMs, keepTryingUntilUtcMs, idKind: kind };
  return bareMessage(way, about, { kind: "weekly", subject, text });
}
