import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { briefOf } from "../brief/brief.ts";
import { briefText } from "../brief/brief-text.ts";
import type { Brief, BriefTiming } from "../brief/brief-value.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import type { Words } from "../words/words.ts";
import type { Channel } from "./channel.ts";
import { messageId } from "./message-id.ts";

const HOUR_MS = 3_600_000;
/** A brief is worth delivering until the next one. */
const KEEP_TRYING_HOURS = 23;

interface PlanMessagesInput {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly words: Words;
  readonly channels: readonly Channel[];
  readonly houseId: string;
  readonly nowUtcMs: number;
  /** Null for the morning; else which amendment of the day it is, from 1. */
  readonly amendment: { readonly number: number } | null;
  readonly timing?: BriefTiming;
}

/** The plan's brief as one message for each channel; an amendment begins with what has changed. */
export function planMessages(input: PlanMessagesInput): NewMessage[] {
  const { plan, channels, houseId, amendment, nowUtcMs } = input;
  const brief = briefOf(input);
  const kind = amendment ? `amendment-${amendment.number}` : "morning";
  const subject = amendment ? amendedTitle(input) : brief.title;
  const body = amendment ? `${changesText(subject, brief)}\n\n${briefText(brief)}` : briefText(brief);
  return channels.map(({ name: channel }) => ({
    id: messageId({ houseId, siteId: plan.siteId, forDay: plan.forDay, kind, channel }),
    siteId: plan.siteId,
    planId: null,
    channel,
    subject,
    body,
    createdUtcMs: nowUtcMs,
    keepTryingUntilUtcMs: nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS,
  }));
}

function amendedTitle({ words, plan, collection }: PlanMessagesInput): string {
  return words.say("brief.amendment.title", { forDay: plan.forDay, site: collection.site.name });
}

function changesText(title: string, brief: Brief): string {
  return [title, ...brief.changes.lines.map((line) => `- ${line}`)].join("\n");
}
