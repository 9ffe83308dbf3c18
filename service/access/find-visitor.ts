import type { Context } from "hono";
import type { Store } from "../store/open-store.ts";
import type { Client } from "./client.ts";
import type { Door } from "./door.ts";
import { digestOf } from "./secret-text.ts";
import { readSessionCookie } from "./session-cookie.ts";
import { liveSession, speaksFor } from "./sessions.ts";
import type { Visitor } from "./visitor.ts";

const HOUR_MS = 3_600_000;

interface FindVisitorInput {
  readonly store: Store;
  readonly door: Door;
  readonly now: () => number;
  clientOf(c: Context): Client;
}

/** Finds out who asks: by the token in the header where there is one, else by the session's cookie. */
export function findVisitor(input: FindVisitorInput): (c: Context) => Promise<Visitor | null> {
  return (c) => {
    const header = c.req.header("authorization");
    return header === undefined ? byCookie(c, input) : byToken(header, input);
  };
}

async function byToken(header: string, { store, now }: FindVisitorInput): Promise<Visitor | null> {
  const secret = /^Bearer +([\w.~+/-]+=*)$/i.exec(header)?.[1];
  const token = secret === undefined ? undefined : await store.tokens.byDigest(digestOf(secret));
  if (!token || now() > token.endsUtcMs) return null;
  // Noted no finer than an hour, so that reading does not write.
  if (now() - (token.usedUtcMs ?? 0) > HOUR_MS) await store.tokens.used(token.id, now());
  return { kind: "token", role: token.role, tokenId: token.id, name: token.name };
}

async function byCookie(
  c: Context,
  { store, door, now, clientOf }: FindVisitorInput,
): Promise<Visitor | null> {
  const secret = readSessionCookie(c, clientOf(c));
  const session = secret === undefined ? undefined : await liveSession(store, { secret, nowUtcMs: now() });
  const account = session && (await door.account(session.accountId));
  if (!session || !account || !speaksFor(session, account)) return null;
  const { id: accountId, name, role } = account;
  return { kind: "session", role, accountId, name, digest: session.digest };
}
