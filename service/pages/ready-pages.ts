import { createHash, randomBytes } from "node:crypto";
import type { Context, MiddlewareHandler } from "hono";
import { pageSeenBy, type SeenBy, seenBy } from "../access/prefix.ts";
import { hasAlready } from "../known-etag.ts";
import type { Store } from "../store/open-store.ts";
import { storeVersion } from "../store/store-version.ts";
import { newOwnId, OWN_ID_BYTES, piecesOf } from "./forms/new-form-id.ts";
import { type PageInParts, packedPage, pageInParts, plainPage } from "./page-in-parts.ts";

interface ReadyPage {
  readonly version: string;
  readonly etag: string;
  readonly parts: PageInParts;
}

/** Pages move with the clock, but no faster than this; chosen by us: an hour mark of the strip moves by a twelfth. */
const MOVES_EVERY_MS = 300_000;
/** All pages together, compressed and not; chosen by us. */
const KEPT_AT_MOST_BYTES = 24 * 1024 * 1024;
/** What this process has made is not what the next one makes. */
const PROCESS = randomBytes(6).toString("hex");

/**
 * Keeps pages ready as long as nothing in the store has changed, and tells a browser that already has the page so.
 * What a stored plan and journal determine is made once, not at every look; one for each address, role and path under
 * which the house is shown, and that is all a page differs by. A page that tells of more than the store asks not to be kept.
 */
export function readyPages({ store, now }: { store: Store; now: () => number }): MiddlewareHandler {
  const shelf = newShelf();
  const versionNow = storeVersion(store);
  return async (c, next) => {
    if (c.req.method !== "GET") return next();
    const seen = seenBy(c);
    const key = `${seen.role} ${seen.prefix} ${addressOf(c.req.url)}`;
    const version = `${PROCESS} ${versionNow()} ${Math.floor(now() / MOVES_EVERY_MS)}`;
    const known = shelf.get(key);
    if (known?.version === version) return readyAnswer(c, known);
    await next();
    if (c.res.status !== 200 || !isHtml(c.res) || isOfTheMoment(c.res)) return;
    const made = await readyPage(c.res, { key, version, seen });
    shelf.put(key, made);
    // What was answered above is replaced whole: a context keeps only one answer.
    c.res = undefined;
    c.res = readyAnswer(c, made);
  };
}

function readyAnswer(c: Context, { etag, parts }: ReadyPage): Response {
  c.set("isAsSeen", true);
  const headers = { ETag: etag, "Cache-Control": "private, no-cache", Vary: "Accept-Encoding" };
  if (hasAlready(c, etag)) return c.body(null, 304, headers);
  const type = { "Content-Type": "text/html; charset=UTF-8" };
  const own = newOwnId();
  return takesGzip(c)
    ? c.body(packedPage(parts, own), 200, { ...headers, ...type, "Content-Encoding": "gzip" })
    : c.body(plainPage(parts, own), 200, { ...headers, ...type });
}

/** Weak: each reader's page has ids of its own. */
async function readyPage(
  answer: Response,
  { key, version, seen }: { key: string; version: string; seen: SeenBy },
): Promise<ReadyPage> {
  const parts = pageInParts(piecesOf(pageSeenBy(await answer.text(), seen)), OWN_ID_BYTES);
  const digest = createHash("sha256").update(`${version} ${key}`).digest("base64url");
  return { version, etag: `W/"${digest.slice(0, 20)}"`, parts };
}

const SCHEME_CHARS = "https://".length;

/** Path and search of an absolute address. */
function addressOf(url: string): string {
  return url.slice(url.indexOf("/", SCHEME_CHARS));
}

function takesGzip(c: Context): boolean {
  return /\bgzip\b(?!\s*;\s*q=0(\.0*)?\s*(,|$))/i.test(c.req.header("accept-encoding") ?? "");
}

function isOfTheMoment(response: Response): boolean {
  return response.headers.get("cache-control")?.includes("no-store") ?? false;
}

function isHtml(response: Response): boolean {
  return response.headers.get("content-type")?.startsWith("text/html") ?? false;
}

/** Pages by key; the one made longest ago goes when there is no more room. */
function newShelf() {
  const pages = new Map<string, ReadyPage>();
  let bytes = 0;
  const take = (key: string) => {
    bytes -= sizeOf(pages.get(key));
    pages.delete(key);
  };
  return {
    get: (key: string) => pages.get(key),
    put(key: string, page: ReadyPage) {
      take(key);
      pages.set(key, page);
      bytes += sizeOf(page);
      while (bytes > KEPT_AT_MOST_BYTES && pages.size > 1) take(pages.keys().next().value ?? "");
    },
  };
}

function sizeOf(page: ReadyPage | undefined): number {
  return page ? page.parts.plain.bytes.length + page.parts.packed.bytes.length : 0;
}
