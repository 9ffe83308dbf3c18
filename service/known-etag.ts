import type { Context } from "hono";

/**
 * Whether who asks already holds what goes under this etag. Compared weakly (RFC 9110, 13.1.2): what is compressed on
 * its way comes back under a weak one.
 */
export function hasAlready(c: Context, etag: string): boolean {
  const held = c.req.header("if-none-match");
  return held?.split(",").some((one) => plainEtag(one) === plainEtag(etag)) ?? false;
}

/** Without the sign that compression on the way puts before it. */
export function plainEtag(etag: string): string {
  return etag.trim().replace(/^W\//, "");
}
