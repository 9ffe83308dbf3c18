import { createHmac } from "node:crypto";
import { type OutgoingRule, type PostedOut, postOut } from "../outgoing/post-out.ts";
import type { StoredChannelOf } from "../store/person.ts";
import type { Channel, Delivery } from "./channel.ts";
import { messageData } from "./message-data.ts";

/**
 * Each message as signed JSON to an address of the owner's choice. Whoever takes it can check that it is ours, fresh and
 * new: id, seconds and body are signed together, and a repeat carries the same id as its Idempotency-Key.
 */
export function webhookChannel(
  { id, url, secret }: StoredChannelOf<"webhook">,
  { rule, now }: { readonly rule: OutgoingRule; readonly now: () => number },
): Channel {
  return {
    name: id,
    to: new URL(url).host,
    sort: "webhook",
    extraOf: (content) => JSON.stringify(messageData(content)),
    async deliver(message) {
      const body = message.extra ?? JSON.stringify({ version: 1, id: message.id, text: message.body });
      const headers = { ...signatureHeaders({ id: message.id, body, secret, nowUtcMs: now() }) };
      return deliveryOf(await postOut({ url: new URL(url), headers, body }, rule));
    },
  };
}

/** By the open convention "Standard Webhooks"; the MAC is HMAC-SHA256 (RFC 2104). */
export function signatureHeaders(of: {
  readonly id: string;
  readonly body: string;
  /** base64url. */
  readonly secret: string;
  readonly nowUtcMs: number;
}): Record<string, string> {
  const seconds = String(Math.floor(of.nowUtcMs / 1000));
  const mac = createHmac("sha256", Buffer.from(of.secret, "base64url"))
    .update(`${of.id}.${seconds}.${of.body}`)
    .digest("base64");
  return {
    "content-type": "application/json; charset=utf-8",
    "webhook-id": of.id,
    "webhook-timestamp": seconds,
    "webhook-signature": `v1,${mac}`,
    "idempotency-key": of.id,
  };
}

/** Answers that another try may change: a time-out, a conflict with an earlier try, too early, too many. */
const PASSING = new Set([408, 409, 425, 429]);

function deliveryOf(posted: PostedOut): Delivery {
  if (posted.kind !== "answered") return { ok: false, fault: `webhook-${posted.kind}` };
  const { status } = posted;
  if (status >= 200 && status < 300) return { ok: true };
  if (status >= 300 && status < 400) return { ok: false, fault: "webhook-redirected", final: true };
  if (status >= 500 || PASSING.has(status)) return { ok: false, fault: "webhook-busy" };
  return { ok: false, fault: "webhook-refused", final: true };
}
