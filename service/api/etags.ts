import { createHash } from "node:crypto";
import type { Context } from "hono";
import { plainEtag } from "../known-etag.ts";
import type { Refusal } from "../problem-answer.ts";

/** Stands for a value as it is now (RFC 9110, 8.8.3). */
export function etagOf(value: unknown): string {
  return `"${createHash("sha256").update(JSON.stringify(value)).digest("base64url").slice(0, 22)}"`;
}

/**
 * Whether an edit was made in view of what stands there now: If-Match names it, or nothing stands there yet. Without
 * If-Match an edit of something that is there is refused, so that nobody overwrites unseen (RFC 6585, 3).
 */
export function editRefusal(c: Context, standing: unknown): Refusal | null {
  const ifMatch = c.req.header("if-match");
  if (standing === undefined) return ifMatch === undefined ? null : CHANGED;
  if (c.req.header("if-none-match") === "*") return CHANGED;
  if (ifMatch === undefined) return NEEDS_MATCH;
  const named = ifMatch.split(",").map(plainEtag);
  return named.includes("*") || named.includes(etagOf(standing)) ? null : CHANGED;
}

const CHANGED: Refusal = {
  status: 412,
  code: "changed-meanwhile",
  detail: "This was changed meanwhile. Read it again, take over what changed, and send it with the new ETag.",
};

const NEEDS_MATCH: Refusal = {
  status: 428,
  code: "needs-if-match",
  detail: "This is there already. Read it and send its ETag in If-Match.",
};
