import type { Context, MiddlewareHandler } from "hono";
import type { Client } from "./client.ts";

/** The path that the routes know, without the one under which the house is shown. */
export function pathWithin(basePath: string, path: string): string {
  if (basePath === "" || (path !== basePath && !path.startsWith(`${basePath}/`))) return path;
  return path.slice(basePath.length) || "/";
}

/** Addresses in our own mark-up; what growers typed has its quotes written out and cannot look like one. */
const ADDRESSES = /((?:href|src|action|formaction)=")\/(?!\/)/g;

/**
 * Shows the house as the one who asks sees it: addresses under the path at which the proxy shows it, and the role at
 * the root of the page, by which the style leaves out what that role cannot do. Pages themselves know of neither, so
 * that one made for one visitor is ready for all.
 */
export function asSeen(clientOf: (c: Context) => Client): MiddlewareHandler {
  return async (c, next) => {
    await next();
    const { prefix } = clientOf(c);
    const location = c.res.headers.get("location");
    if (prefix !== "" && location?.startsWith("/")) c.res.headers.set("Location", prefix + location);
    const role = c.get("visitor")?.role ?? "owner";
    if ((prefix === "" && role === "owner") || !isHtml(c.res)) return;
    const page = (await c.res.text())
      .replace(ADDRESSES, `$1${prefix}/`)
      .replace("<html ", `<html data-role="${role}" `);
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
