import type { Context, MiddlewareHandler } from "hono";
import type { Client } from "./client.ts";
import type { Role } from "./roles.ts";

/** The path that the routes know, without the one under which the house is shown. */
export function pathWithin(basePath: string, path: string): string {
  if (basePath === "" || (path !== basePath && !path.startsWith(`${basePath}/`))) return path;
  return path.slice(basePath.length) || "/";
}

/** Addresses in our own mark-up; what growers typed has its quotes written out and cannot look like one. */
const ADDRESSES = /((?:href|src|action|formaction)=")\/(?!\/)/g;

/** For whom a page is, as far as it shows. */
export interface SeenBy {
  /** Path under which the house is shown; empty at the root. */
  readonly prefix: string;
  readonly role: Role;
}

declare module "hono" {
  interface ContextVariableMap {
    prefix: string;
    /** The answer is already as the one who asks sees it. */
    isAsSeen: boolean;
  }
}

export function seenBy(c: Context): SeenBy {
  return { prefix: c.get("prefix") ?? "", role: c.get("visitor")?.role ?? "owner" };
}

/**
 * The page as the one who asks sees it: addresses under the path at which the proxy shows the house, and the role at
 * the root of the page, by which the style leaves out what that role cannot do.
 */
export function pageSeenBy(page: string, { prefix, role }: SeenBy): string {
  const placed = prefix === "" ? page : page.replace(ADDRESSES, `$1${prefix}/`);
  return role === "owner" ? placed : placed.replace("<html ", `<html data-role="${role}" `);
}

/** Shows the house as the one who asks sees it. Pages themselves know of neither path nor role. */
export function asSeen(clientOf: (c: Context) => Client): MiddlewareHandler {
  return async (c, next) => {
    const { prefix } = clientOf(c);
    c.set("prefix", prefix);
    await next();
    const location = prefix === "" ? null : c.res.headers.get("location");
    if (location?.startsWith("/")) c.res.headers.set("Location", prefix + location);
    const seen = seenBy(c);
    if (c.get("isAsSeen") || (prefix === "" && seen.role === "owner") || !isHtml(c.res)) return;
    const page = pageSeenBy(await c.res.text(), seen);
    const headers = new Headers(c.res.headers);
    headers.delete("content-length");
    const { status } = c.res;
    c.res = undefined;
    c.res = new Response(page, { status, headers });
  };
}

function isHtml({ status, headers }: Response): boolean {
  return status !== 304 && (headers.get("content-type")?.startsWith("text/html") ?? false);
}
