import { createHash, randomBytes } from "node:crypto";
import type { MiddlewareHandler } from "hono";
import type { Store } from "../store/open-store.ts";
import { piecesOf, withOwnIds } from "./forms/new-form-id.ts";

interface ReadyPage {
  readonly version: string;
  readonly pieces: readonly Buffer[];
}

/** Pages move with the clock, but no faster than this; chosen by us: an hour mark of the strip moves by a twelfth. */
const MOVES_EVERY_MS = 300_000;
const KEPT_AT_MOST = 400;
/** What this process has made is not what the next one makes. */
const PROCESS = randomBytes(6).toString("hex");

/**
 * Keeps pages ready as long as nothing in the store has changed, and tells a browser that already has the page so.
 * What a stored plan and journal determine is made once, not at every look.
 */
export function readyPages({ store, now }: { store: Store; now: () => number }): MiddlewareHandler {
  const ready = new Map<string, ReadyPage>();
  const storeVersion = versionOf(store);
  return async (c, next) => {
    if (c.req.method !== "GET") return next();
    const { pathname, search } = new URL(c.req.url);
    const address = pathname + search;
    const version = `${PROCESS} ${storeVersion()} ${Math.floor(now() / MOVES_EVERY_MS)}`;
    const etag = etagOf(version, address);
    if (c.req.header("if-none-match") === etag && ready.get(address)?.version === version) {
      return c.body(null, 304, { ETag: etag, "Cache-Control": "private, no-cache" });
    }
    const known = ready.get(address);
    if (known?.version !== version) {
      await next();
      if (c.res.status !== 200 || !isHtml(c.res)) return;
      keep(ready, address, { version, pieces: piecesOf(await c.res.text()) });
    }
    // What was answered above is replaced whole: a context keeps only one answer.
    c.res = undefined;
    c.res = c.body(withOwnIds(ready.get(address)!.pieces), 200, {
      "Content-Type": "text/html; charset=UTF-8",
      ETag: etag,
      "Cache-Control": "private, no-cache",
    });
  };
}

/** Moves with every write of this connection and, through the data version, of any other. */
function versionOf({ raw }: Store): () => string {
  const changes = raw.prepare("SELECT total_changes()").pluck();
  return () => `${changes.get()} ${raw.pragma("data_version", { simple: true })}`;
}

function etagOf(version: string, address: string): string {
  return `"${createHash("sha256").update(`${version} ${address}`).digest("base64url").slice(0, 20)}"`;
}

function isHtml(response: Response): boolean {
  return response.headers.get("content-type")?.startsWith("text/html") ?? false;
}

function keep(ready: Map<string, ReadyPage>, address: string, page: ReadyPage): void {
  ready.delete(address);
  ready.set(address, page);
  const oldest = ready.keys().next().value;
  if (ready.size > KEPT_AT_MOST && oldest !== undefined) ready.delete(oldest);
}
