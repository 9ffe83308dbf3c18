import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { briefOf } from "../brief/brief.ts";
import { briefText } from "../brief/brief-text.ts";
import type { Brief, BriefTiming } from "../brief/brief-value.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import type { Words } from "../words/words.ts";
import { type AnswerLinks, answerLinks } from "./answer-links.ts";
import { messageId } from "./message-id.ts";
import type { Signing } from "./post.ts";
import type { Way } from "./way.ts";

const HOUR_MS = 3_600_000;
/** A brief is worth delivering until the next one. */
const KEEP_TRYING_HOURS = 23;

interface PlanMessagesInput {
  readonly plan: Plan;
  readonly collection: Collection;
  readonly ways: readonly Way[];
  readonly signing: Signing;
  readonly houseId: string;
  readonly nowUtcMs: number;
  /** Null for the morning; else which amendment of the day it is, from 1. */
  readonly amendment: { readonly number: number } | null;
  readonly timing?: BriefTiming;
}

/** The plan's brief as one message for each way that wants it; an amendment begins with what has changed. */
export function planMessages(input: PlanMessagesInput): NewMessage[] {
  const wanted = input.amendment ? "amendment" : "morning";
  return input.ways
    .filter(({ kinds }) => kinds.has(wanted))
    .map((way) => ({ way, brief: briefFor(way, input) }))
    .filter(({ way, brief }) => input.amendment !== null || !way.skipsEmpty || brief.emptyLine === null)
    .map(({ way, brief }) => messageBy(way, { ...input, brief }));
}

/** The brief in somebody's own words; whoever looks after the pots of another is told for how long. */
function briefFor({ words, cover }: Way, input: PlanMessagesInput): Brief {
  const brief = briefOf({ ...input, words });
  if (!cover) return brief;
  const note = words.say("handover.note", { lastDay: cover.toDay });
  const { emptyLine } = brief;
  return {
    ...brief,
    timing: [note, ...brief.timing],
    emptyLine: emptyLine === null ? null : `${emptyLine} ${note}`,
  };
}

function messageBy(way: Way, input: PlanMessagesInput & { readonly brief: Brief }): NewMessage {
  const { plan, collection, houseId, nowUtcMs, amendment, brief } = input;
  const { channel, words } = way;
  const kind = amendment ? `amendment-${amendment.number}` : "morning";
  const id = messageId({
    houseId,
    siteId: plan.siteId,
    forDay: plan.forDay,
    kind,
    channel: channel.name,
  });
  const links = answerLinks({
    ...input.signing,
    plan,
    madeUtcMs: nowUtcMs,
    personId: way.personId,
  });
  const subject = amendment ? amendedTitle(input, words) : brief.title;
  const text = [
    ...(amendment ? [changesText(subject, brief)] : []),
    amendment === null && brief.emptyLine !== null ? `${brief.emptyLine}\n` : briefText(brief),
    ...answersText(brief, { links, words }),
  ].join("\n");
  const extra = channel.extraOf?.({
    id,
    kind: amendment ? "amendment" : "morning",
    subject,
    text,
    words,
    about: { brief, plan, collection },
    houseId,
    links,
  });
  return {
    id,
    siteId: plan.siteId,
    planId: null,
    channel: channel.name,
    subject,
    body: text,
    createdUtcMs: nowUtcMs,
    keepTryingUntilUtcMs: nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS,
    extra: extra ?? null,
  };
}

function amendedTitle({ plan, collection }: PlanMessagesInput, words: Words): string {
  return words.say("brief.amendment.title", { forDay: plan.forDay, site: collection.site.name });
}

function changesText(title: string, brief: Brief): string {
  return [title, ...brief.changes.lines.map((line) => `- ${line}`), ""].join("\n");
}

/** Where to answer the list; nothing where there is nothing to do or no address leads to the house. */
function answersText(brief: Brief, { links, words }: { links: AnswerLinks; words: Words }): string[] {
  if (brief.stops.length === 0) return [];
  const lines = (["done", "not-today", "log"] as const).flatMap((purpose) => {
    const address = links.address(purpose);
    return address === null ? [] : [`${words.say(`answer.all.${purpose}`)}: ${address}`];
  });
  return lines.length === 0 ? [] : [...lines, ""];
}
