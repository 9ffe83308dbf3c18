import { createHash, timingSafeEqual } from "node:crypto";
import type { MiddlewareHandler } from "hono";

const OPEN_PATHS = new Set(["/healthz", "/readyz"]);
const WINDOW_MS = 60_000;
/** Wrong tries a minute before all are turned away for the rest of it. Chosen by us. */
const WRONG_TRIES = 10;

/** Asks every visitor for the passphrase (RFC 7617, any user name). Only whether the house is up is told to all. */
export function passphraseGate(passphrase: string, now: () => number): MiddlewareHandler {
  const wanted = digest(passphrase);
  let wrong = { sinceUtcMs: 0, count: 0 };
  return async (c, next) => {
    if (OPEN_PATHS.has(c.req.path)) return next();
    const given = passphraseOf(c.req.header("authorization"));
    if (now() - wrong.sinceUtcMs > WINDOW_MS) wrong = { sinceUtcMs: now(), count: 0 };
    if (wrong.count >= WRONG_TRIES) return c.text("Too many wrong tries. Wait a minute.\n", 429);
    if (given !== null && timingSafeEqual(digest(given), wanted)) return next();
    if (given !== null) wrong.count++;
    c.header("WWW-Authenticate", 'Basic realm="Leebench", charset="UTF-8"');
    return c.text("Give the passphrase that was set on the machine; any name will do.\n", 401);
  };
}

/** Digests have one length whatever the text, so that the comparison tells nothing by its time. */
function digest(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}

function passphraseOf(header: string | undefined): string | null {
  const [scheme, token] = header?.split(" ") ?? [];
  if (scheme?.toLowerCase() !== "basic" || token === undefined) return null;
  const pair = Buffer.from(token, "base64").toString("utf8");
  return pair.includes(":") ? pair.slice(pair.indexOf(":") + 1) : null;
}
