import { type OutgoingRule, type PostedOut, postOut } from "../outgoing/post-out.ts";
import type { StoredChannelOf } from "../store/person.ts";
import type { Channel, Delivery } from "./channel.ts";
import type { MessageContent } from "./message-content.ts";
import { type PushKeys, webPush } from "./push-keys.ts";

export interface PushLine {
  keys(): PushKeys;
  /** Whom a notification service may write to: a mailto: or https: address (RFC 8292 section 2.1). */
  readonly contact: string;
  readonly rule: OutgoingRule;
  readonly now: () => number;
}

/** What the worker on the device gets. */
export interface PushContent {
  readonly title: string;
  readonly text: string;
  /** Replaces what is shown under the same tag. */
  readonly tag: string;
  readonly lang: string;
  /** Paths to post an answer to, with the words of the buttons; none where there is nothing to answer. */
  readonly answers: readonly { readonly action: string; readonly title: string; readonly path: string }[];
}

/** Notification on one device through its browser's service, sealed so that the service cannot read it (RFC 8291). */
export function pushChannel(stored: StoredChannelOf<"push">, line: PushLine): Channel {
  return {
    name: stored.id,
    to: stored.device,
    sort: "push",
    extraOf: (content) => JSON.stringify(pushContent(content)),
    async deliver(message) {
      const ttlS = Math.max(0, Math.round((message.keepTryingUntilUtcMs - line.now()) / 1000));
      const payload = message.extra ?? JSON.stringify(plainContent(message));
      const sealed = sealedFor(stored, { line, payload, ttlS, topic: topicOf(message.id) });
      return deliveryOf(await postOut(sealed, line.rule));
    },
  };
}

/** RFC 8030 section 5.4: up to 32 characters of base64url. A later message of the same topic replaces one not yet shown. */
function topicOf(messageId: string): string {
  const [forDay = "", kind = ""] = messageId.split(".");
  return `${kind.split("-")[0]}-${forDay}`.slice(0, 32);
}

function sealedFor(
  { endpoint, p256dh, auth }: StoredChannelOf<"push">,
  { line, payload, ttlS, topic }: { line: PushLine; payload: string; ttlS: number; topic: string },
) {
  const { keys, contact } = line;
  const request = webPush().generateRequestDetails({ endpoint, keys: { p256dh, auth } }, payload, {
    vapidDetails: { subject: contact, ...keys() },
    contentEncoding: "aes128gcm",
    TTL: ttlS,
    // RFC 8030 section 5.3: worth waking the radio for, not the battery's last.
    urgency: "normal",
    topic,
  });
  const headers = Object.fromEntries(
    Object.entries(request.headers).map(([name, value]) => [name.toLowerCase(), String(value)]),
  );
  delete headers["content-length"];
  return { url: new URL(request.endpoint), headers, body: request.body ?? "" };
}

/** RFC 8030 section 5.1 wants 4096 bytes taken; the seal costs some hundred. Text is cut long before. Chosen by us. */
const TEXT_CHARS = 700;

function pushContent({ id, kind, subject, text, about, links, words }: MessageContent): PushContent {
  const deeds = about?.brief.stops.flatMap((stop) => stop.groups.map(({ sentence }) => sentence)) ?? [];
  const urgent = about?.brief.cautions.lines.filter(({ isUrgent }) => isUrgent) ?? [];
  const changes = kind === "amendment" ? (about?.brief.changes.lines ?? []) : [];
  const lines =
    about === null
      ? [text]
      : [...changes, about.brief.lead, ...urgent.map(({ sentence }) => sentence), ...deeds];
  const isAnswerable = links !== null && deeds.length > 0;
  return {
    title: about !== null && kind === "morning" ? about.brief.headline : subject,
    text: cutAt(lines.join("\n"), TEXT_CHARS),
    tag: topicOf(id),
    lang: words.language,
    answers: isAnswerable
      ? (["done", "not-today"] as const).map((purpose) => ({
          action: purpose,
          title: words.say(`answer.all.${purpose}`),
          path: links.path(purpose),
        }))
      : [],
  };
}

function plainContent({ id, subject, body }: { id: string; subject: string; body: string }): PushContent {
  return { title: subject, text: cutAt(body, TEXT_CHARS), tag: topicOf(id), lang: "", answers: [] };
}

/** Whole lines as far as they fit. */
function cutAt(text: string, mostChars: number): string {
  if (text.length <= mostChars) return text;
  const cut = text.slice(0, mostChars);
  return `${cut.slice(0, Math.max(cut.lastIndexOf("\n"), 0)) || cut}\n…`;
}

/** RFC 8030 section 7.3 and RFC 8292: 404 and 410 end a subscription; 429 and 5xx are for a while. */
function deliveryOf(posted: PostedOut): Delivery {
  if (posted.kind !== "answered") return { ok: false, fault: "push-unreachable" };
  const { status } = posted;
  if (status >= 200 && status < 300) return { ok: true };
  if (status === 404 || status === 410) return { ok: false, fault: "push-gone", final: true, gone: true };
  if (status >= 500 || status === 429) return { ok: false, fault: "push-busy" };
  return { ok: false, fault: "push-refused", final: true };
}
