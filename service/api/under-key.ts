import type { Context } from "hono";
import { digestOf, newSecret } from "../access/secret-text.ts";
import type { Store } from "../store/open-store.ts";
import { type ApiOutcome, isRefusal } from "./api-route.ts";

const KEPT_MS = 3 * 86_400_000;
const KEY = /^[\x21-\x7e]{1,100}$/;

/** Requests under way, by asker and key. */
const underWay = new Set<string>();

/**
 * Does the work once for each Idempotency-Key of an asker; sent again within three days, the same request gets the
 * same answer, and another request under the same key is refused. Refused work is not kept: it may be sent again.
 */
export async function underKey(
  c: Context,
  { store, now, request }: { store: Store; now: () => number; request: unknown },
  work: () => Promise<ApiOutcome>,
): Promise<ApiOutcome> {
  const key = c.req.header("idempotency-key");
  if (key === undefined) return work();
  if (!KEY.test(key))
    return {
      status: 400,
      code: "key-not-usable",
      detail: "Give 1 to 100 printable characters as Idempotency-Key.",
    };
  const asker = askerOf(c);
  const requestDigest = digestOf(JSON.stringify([c.req.method, c.req.path, request]));
  const kept = await store.keptAnswers.get(asker, key);
  if (kept) return kept.requestDigest === requestDigest ? kept.answer : USED_OTHERWISE;
  const name = `${asker} ${key}`;
  if (underWay.has(name))
    return {
      status: 409,
      code: "under-way",
      detail: "The same key is being worked on. Send it again in a second.",
    };
  underWay.add(name);
  try {
    const outcome = await work();
    if (isRefusal(outcome) || "file" in outcome) return outcome;
    const answer = { status: outcome.status ?? 200, body: outcome.body } as const;
    await store.keptAnswers.put({ asker, key, requestDigest, answer, madeUtcMs: now() }, now() - KEPT_MS);
    return outcome;
  } finally {
    underWay.delete(name);
  }
}

const USED_OTHERWISE = {
  status: 422,
  code: "key-used-otherwise",
  detail: "This Idempotency-Key was used for another request. Give every request a key of its own.",
} as const;

/** Keys of one asker mean nothing for another. */
function askerOf(c: Context): string {
  const visitor = c.get("visitor");
  if (visitor?.kind === "token") return `token ${visitor.tokenId}`;
  return visitor?.kind === "session" ? `account ${visitor.accountId}` : "this machine";
}

/** An id for what a request makes: the same where it is sent again under its key, even when the first answer got lost. */
export function idUnderKey(c: Context, request: unknown): string {
  const key = c.req.header("idempotency-key");
  return key === undefined ? newSecret() : digestOf(JSON.stringify([askerOf(c), key, request])).slice(0, 40);
}
