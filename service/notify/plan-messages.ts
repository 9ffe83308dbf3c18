import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { briefOf } from "../brief/brief.ts";
import { briefText } from "../brief/brief-text.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import type { Words } from "../words/words.ts";
import type { Channel } from "./channel.ts";
import { messageId } from "./message-id.ts";

const HOUR_MS = 3_600_000;
/** A brief is worth delivering until the next one. */
const KEEP_TRYING_HOURS = 23;

/** The plan's brief as one message for each channel. */
export function planMessages(input: {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly words: Words;
  readonly channels: readonly Channel[];
  readonly houseId: string;
  readonly kind: string;
  readonly nowUtcMs: number;
}): NewMessage[] {
  const { plan, channels, houseId, kind, nowUtcMs } = input;
  const brief = briefOf(input);
  const body = briefText(brief);
  return channels.map(({ name: channel }) => ({
    id: messageId({ houseId, siteId: plan.siteId, forDay: plan.forDay, kind, channel }),
    siteId: plan.siteId,
    planId: null,
    channel,
    subject: brief.title,
    body,
    createdUtcMs: nowUtcMs,
    keepTryingUntilUtcMs: nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS,
  }));
}
