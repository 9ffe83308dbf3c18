import type { NewMessage } from "../store/outbox-store.ts";
import type { MessageContent } from "./message-content.ts";
import { messageId } from "./message-id.ts";
import type { Way } from "./way.ts";

interface About {
  readonly houseId: string;
  readonly siteId: string;
  readonly forDay: string;
  readonly nowUtcMs: number;
  readonly keepTryingUntilUtcMs: number;
  /** What the message's id is made from besides, so that the same news has the same id. */
  readonly idKind: string;
}

/** A message that stands on no plan and asks for no answer, as one way carries it. */
export function bareMessage(
  { channel, words }: Way,
  { houseId, siteId, forDay, nowUtcMs, keepTryingUntilUtcMs, idKind }: About,
  { kind, subject, text }: Pick<MessageContent, "kind" | "subject" | "text">,
): NewMessage {
  const id = messageId({ houseId, siteId, forDay, kind: idKind, channel: channel.name });
  const content = { id, kind, subject, text, words, about: null, links: null, houseId };
  return {
    id,
    siteId,
    planId: null,
    channel: channel.name,
    subject,
    body: text.endsWith("\n") ? text : `${text}\n`,
    createdUtcMs: nowUtcMs,
    keepTryingUntilUtcMs,
    extra: channel.extraOf?.(content) ?? null,
  };
}
