import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { weeklyOf, weeklyText } from "../brief/weekly.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { messageId } from "./message-id.ts";
import type { Way } from "./way.ts";

const HOUR_MS = 3_600_000;
/** The week is worth reading for two days; after that its own briefs have told more. Chosen by us. */
const KEEP_TRYING_HOURS = 47;
/** Mondays: ISO 8601 begins the week there. */
const WEEK_STARTS_ON = 1;

/** The look at the week, once a week with the first morning of it, for each way that wants it. */
export function weeklyMessages(input: {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly ways: readonly Way[];
  readonly houseId: string;
  readonly nowUtcMs: number;
}): NewMessage[] {
  const { plan, collection, houseId, nowUtcMs } = input;
  if (new Date(`${plan.forDay}T12:00Z`).getUTCDay() !== WEEK_STARTS_ON) return [];
  return input.ways
    .filter(({ kinds }) => kinds.has("weekly"))
    .map(({ channel, words }) => {
      const weekly = weeklyOf({ plan, collection, words });
      const text = weeklyText(weekly);
      const { siteId, forDay } = plan;
      const id = messageId({ houseId, siteId, forDay, kind: "weekly", channel: channel.name });
      const content = { id, kind: "weekly" as const, subject: weekly.title, text, words };
      return {
        id,
        siteId,
        planId: null,
        channel: channel.name,
        subject: weekly.title,
        body: text,
        createdUtcMs: nowUtcMs,
        keepTryingUntilUtcMs: nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS,
        extra: channel.extraOf?.({ ...content, about: null, links: null }) ?? null,
      };
    });
}
