import { calendarDay } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import { bareMessage } from "./bare-message.ts";
import type { Delivery } from "./channel.ts";
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
  way: Way,
  { store, site, nowUtcMs }: { store: Store; site: Site; nowUtcMs: number },
): Message {
  const forDay = calendarDay(nowUtcMs, site.zone);
  const idKind = `test-${nowUtcMs}`;
  const about = { forDay, idKind, siteId: site.id, nowUtcMs, keepTryingUntilUtcMs: nowUtcMs };
  const subject = way.words.say("test.subject", { site: site.name });
  const text = way.words.say("test.text", { site: site.name });
  const made = bareMessage(way, { ...about, houseId: store.houseId }, { kind: "test", subject, text });
  const extra = made.extra ?? null;
  return {
    ...made,
    extra,
    state: "waiting",
    tries: 0,
    nextTryUtcMs: nowUtcMs,
    settledUtcMs: null,
    lastFault: null,
  };
}
