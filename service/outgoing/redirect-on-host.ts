/**
 * Where a redirect leads, or null where it must not be followed: to another host, to another port of the same one (but
 * for the change from open to safe at the usual ports), or from a safe line to an open one.
 */
export function redirectOnHost(location: string, from: URL): URL | null {
  const next = URL.canParse(location, from.href) ? new URL(location, from.href) : null;
  if (next === null || next.hostname !== from.hostname) return null;
  if (next.origin === from.origin) return next;
  const isMadeSafe = from.protocol === "http:" && next.protocol === "https:";
  return isMadeSafe && from.port === "" && next.port === "" ? next : null;
}
