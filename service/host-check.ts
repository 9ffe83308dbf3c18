import type { MiddlewareHandler } from "hono";
import { isLoopbackHost } from "./loopback.ts";

/** Names by which a browser on this machine calls it. */
const OWN_NAMES = ["127.0.0.1", "localhost", "[::1]"];
const MISDIRECTED = 421;

/**
 * Answers only to the house's own names, with any port. A page from elsewhere can have its name lead to this machine
 * and then read what is served here (DNS rebinding); its name still stands in the Host header and gives it away. Not
 * asked of a house that listens to the network: that one asks for its passphrase, which no other name's page holds.
 */
export function ownNamesOnly(settings: {
  readonly host: string;
  /** The name under which a proxy in front is called; null without one. */
  readonly publicHost: string | null;
}): MiddlewareHandler {
  const { host, publicHost } = settings;
  const names = new Set([...OWN_NAMES, nameOf(host), ...(publicHost === null ? [] : [nameOf(publicHost)])]);
  return async (c, next) => {
    const asked = c.req.header("host") ?? new URL(c.req.url).host;
    if (!isLoopbackHost(host) || names.has(nameWithoutPort(asked))) return next();
    return c.text(
      "This house does not go by that name. Call it as its first line says, or set LEEBENCH_PUBLIC_HOST to the name.\n",
      MISDIRECTED,
    );
  };
}

/** As it stands in a Host header: IPv6 addresses in brackets. */
function nameOf(host: string): string {
  return (host.includes(":") ? `[${host}]` : host).toLowerCase();
}

/** A dot at the end of a name changes nothing about it. */
function nameWithoutPort(host: string): string {
  return host.replace(/:\d*$/, "").replace(/\.$/, "").toLowerCase();
}
