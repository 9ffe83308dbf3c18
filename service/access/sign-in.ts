import type { Context } from "hono";
import { PASSPHRASE_MOST_CHARS } from "../environment-schema.ts";
import type { Account } from "../store/accounts-store.ts";
import type { AccessInput } from "./access-input.ts";
import { isPassphraseOf } from "./passphrase.ts";
import { digestOf } from "./secret-text.ts";
import { readSessionCookie, writeSessionCookie } from "./session-cookie.ts";
import { beginSession, LONGEST_MS } from "./sessions.ts";

/** What came of a try to get in: who it is, or how long to wait, or nothing. */
export type Tried =
  | { readonly kind: "right"; readonly account: Account }
  | { readonly kind: "wrong" }
  | { readonly kind: "wait"; readonly waitS: number };

/** Counts a try of the device and, where it may try now, makes it. A wrong name takes as long as a wrong passphrase. */
export async function tryPassphrase(
  c: Context,
  { name, passphrase }: { name: string; passphrase: string },
  { door, tries, clientOf }: AccessInput,
): Promise<Tried> {
  return counted(clientOf(c).address, tries, async () => {
    // None is empty or longer than may be chosen; no time goes into such a try.
    if (passphrase === "" || passphrase.length > PASSPHRASE_MOST_CHARS) return null;
    const account = await door.named(name);
    const isRight = await isPassphraseOf(account?.passphrase ?? null, passphrase);
    return isRight && account ? account : null;
  });
}

/** The same for a one-time code. */
export async function tryCode(
  c: Context,
  code: string,
  { door, tries, clientOf }: AccessInput,
): Promise<Tried> {
  return counted(clientOf(c).address, tries, () => door.claimantOf(code));
}

async function counted(
  client: string,
  tries: AccessInput["tries"],
  attempt: () => Promise<Account | null>,
): Promise<Tried> {
  const waitS = tries.waitS(client);
  if (waitS > 0) return { kind: "wait", waitS };
  tries.begin(client);
  const account = await attempt();
  if (!account) return { kind: "wrong" };
  tries.wasRight(client);
  return { kind: "right", account };
}

/** Signs the device in anew: the session that it brought, if any, ends, and its secret is never used again. */
export async function signInDevice(
  c: Context,
  account: Account,
  { context: { store, now }, clientOf }: AccessInput,
): Promise<void> {
  const client = clientOf(c);
  const brought = readSessionCookie(c, client);
  if (brought !== undefined) await store.sessions.end(digestOf(brought));
  const device = c.req.header("user-agent") ?? "";
  const secret = await beginSession(store, { account, device, nowUtcMs: now() });
  writeSessionCookie(c, { ...client, secret, maxAgeS: Math.floor(LONGEST_MS / 1000) });
}
