import type { Log } from "../log.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Delivery } from "./channel.ts";
import { quietUntilUtcMs } from "./quiet-hours.ts";
import type { Way } from "./way.ts";

interface DeliverInput {
  readonly store: Store;
  readonly ways: readonly Way[];
  readonly now: () => number;
  readonly log: Log;
}

const MINUTE_MS = 60_000;
const LONGEST_WAIT_MS = 60 * MINUTE_MS;
const AT_ONCE = 10;

/**
 * Delivers every message whose time has come. A message is settled only after its channel took it: a crash between the
 * two repeats the delivery under the same id, and never loses it.
 * @returns how many were sent
 */
export async function deliverDue(input: DeliverInput): Promise<number> {
  const messages = await input.store.outbox.due(input.now(), AT_ONCE);
  // Side by side: one slow server must not hold up the others, nor the next heartbeat.
  const sent = await Promise.all(messages.map((message) => deliverOne(input, message)));
  return sent.filter(Boolean).length;
}

async function deliverOne(input: DeliverInput, message: Message): Promise<boolean> {
  const way = input.ways.find(({ channel }) => channel.name === message.channel);
  const quietUntil = way ? await quietUntilFor(way, { input, message }) : null;
  if (quietUntil !== null) {
    await input.store.outbox.postpone(message.id, quietUntil);
    return false;
  }
  const delivery = await tryWay(way, message);
  await settle(input, { message, delivery });
  return delivery.ok;
}

/** Nobody is woken: a message that falls into quiet hours goes when they are over. */
async function quietUntilFor(
  { quiet }: Way,
  { input: { store, now }, message }: { input: DeliverInput; message: Message },
): Promise<number | null> {
  if (quiet === null) return null;
  const site = await store.sites.get(message.siteId);
  return site ? quietUntilUtcMs(quiet, { nowUtcMs: now(), zone: site.zone }) : null;
}

async function tryWay(way: Way | undefined, message: Message): Promise<Delivery> {
  if (!way) return { ok: false, fault: "channel-not-set-up" };
  try {
    return await way.channel.deliver(message);
  } catch (error) {
    return { ok: false, fault: error instanceof Error ? error.name : "unknown" };
  }
}

async function settle(
  { store, now, log }: DeliverInput,
  { message, delivery }: { message: Message; delivery: Delivery },
): Promise<void> {
  const { id, channel } = message;
  const atUtcMs = now();
  if (delivery.ok) {
    await store.outbox.markSent(id, atUtcMs);
    log.info({ event: "message-sent", id, channel, tries: message.tries + 1 });
    return;
  }
  const { fault, final, gone } = delivery;
  if (gone) await store.channels.remove(channel);
  const nextTryUtcMs = atUtcMs + waitMs(message.tries);
  if (final || nextTryUtcMs > message.keepTryingUntilUtcMs) {
    await store.outbox.markGivenUp(id, { fault, atUtcMs });
    log.error({ event: "message-given-up", id, channel, fault });
    return;
  }
  await store.outbox.markFailed(id, { fault, nextTryUtcMs });
  log.warn({ event: "message-failed", id, channel, fault, nextTryUtcMs });
}

/** 1, 2, 4 ... 60 minutes. */
function waitMs(tries: number): number {
  return Math.min(MINUTE_MS * 2 ** Math.min(tries, 10), LONGEST_WAIT_MS);
}
