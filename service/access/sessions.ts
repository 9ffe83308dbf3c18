import type { Account } from "../store/accounts-store.ts";
import type { Store } from "../store/open-store.ts";
import type { Session } from "../store/sessions-store.ts";
import { digestOf, newSecret, sameDigest } from "./secret-text.ts";

const DAY_MS = 86_400_000;
/** A session ends when it was not used for so long, and in any case after so long. Chosen by us for a daily look. */
const IDLE_MS = 30 * DAY_MS;
export const LONGEST_MS = 180 * DAY_MS;
/** The last use is noted no finer than this, so that looking at pages does not write. */
const NOTED_EVERY_MS = DAY_MS / 4;
const DEVICE_MOST_CHARS = 120;

/** Stands for the passphrase of an account; changes with it. */
export function stampOf({ passphrase }: Account): string {
  return digestOf(passphrase ?? "");
}

/** Begins a session under a secret that nobody had before, whatever the browser brought. @returns the cookie's text */
export async function beginSession(
  store: Store,
  { account, device, nowUtcMs }: { account: Account; device: string; nowUtcMs: number },
): Promise<string> {
  const secret = newSecret();
  await store.sessions.endOld({ createdUtcMs: nowUtcMs - LONGEST_MS, seenUtcMs: nowUtcMs - IDLE_MS });
  await store.sessions.add({
    digest: digestOf(secret),
    accountId: account.id,
    stamp: stampOf(account),
    device: device.slice(0, DEVICE_MOST_CHARS),
    createdUtcMs: nowUtcMs,
    seenUtcMs: nowUtcMs,
  });
  return secret;
}

/** The session of a cookie while it holds; its last use is noted now and then. */
export async function liveSession(
  store: Store,
  { secret, nowUtcMs }: { secret: string; nowUtcMs: number },
): Promise<Session | undefined> {
  const session = await store.sessions.get(digestOf(secret));
  if (!session || isOver(session, nowUtcMs)) return undefined;
  if (nowUtcMs - session.seenUtcMs > NOTED_EVERY_MS) await store.sessions.seen(session.digest, nowUtcMs);
  return session;
}

/** Whether a session still speaks for the account: not after its passphrase has changed. */
export function speaksFor(session: Session, account: Account): boolean {
  return sameDigest(session.stamp, stampOf(account));
}

function isOver({ createdUtcMs, seenUtcMs }: Session, nowUtcMs: number): boolean {
  return nowUtcMs - createdUtcMs > LONGEST_MS || nowUtcMs - seenUtcMs > IDLE_MS;
}
