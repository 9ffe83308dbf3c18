import { calendarDay } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Delivery } from "./channel.ts";
import { messageId } from "./message-id.ts";
import type { Way } from "./way.ts";

/** Sends one message by a way at once, whatever the hour, and tells how it went. It is not tried again. */
export async function sendTest(
  way: Way,
  { store, site, nowUtcMs }: { readonly store: Store; readonly site: Site; readonly nowUtcMs: number },
): Promise<Delivery> {
  const { channel } = way;
  try {
    const delivery = await channel.deliver(testMessage(way, { store, site, nowUtcMs }));
    if (!delivery.ok && delivery.gone) await store.channels.remove(channel.name);
    return delivery;
  } catch {
    return { ok: false, fault: "channel-broke" };
  }
}

function testMessage(
  { channel, words }: Way,
  { store, site, nowUtcMs }: { store: Store; site: Site; nowUtcMs: number },
): Message {
  const forDay = calendarDay(nowUtcMs, site.zone);
  const kind = `test-${nowUtcMs}`;
  const id = messageId({ houseId: store.houseId, siteId: site.id, forDay, kind, channel: channel.name });
  const subject = words.say("test.subject", { site: site.name });
  const text = words.say("test.text", { site: site.name });
  const extra = channel.extraOf?.({
    id,
    kind: "test",
    subject,
    text,
    words,
    about: null,
    links: null,
    houseId: store.houseId,
  });
  return {
    id,
    siteId: site.id,
    planId: null,
    channel: channel.name,
    subject,
    body: `${text}\n`,
    createdUtcMs: nowUtcMs,
    keepTryingUntilUtcMs: nowUtcMs,
    extra: extra ?? null,
    state: "waiting",
    tries: 0,
    nextTryUtcMs: nowUtcMs,
    settledUtcMs: null,
    lastFault: null,
  };
}
