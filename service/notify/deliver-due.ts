import type { Log } from "../log.ts";
import type { Store } from "../store/open-store.ts";
import type { Message } from "../store/outbox-store.ts";
import type { Channel, Delivery } from "./channel.ts";

interface DeliverInput {
  readonly store: Store;
  readonly channels: readonly Channel[];
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
  const delivery = await tryChannel(input, message);
  await settle(input, { message, delivery });
  return delivery.ok;
}

async function tryChannel({ channels }: DeliverInput, message: Message): Promise<Delivery> {
  const channel = channels.find(({ name }) => name === message.channel);
  if (!channel) return { ok: false, fault: "channel-not-set-up" };
  try {
    return await channel.deliver(message);
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
  const { fault } = delivery;
  const nextTryUtcMs = atUtcMs + waitMs(message.tries);
  if (nextTryUtcMs > message.keepTryingUntilUtcMs) {
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
