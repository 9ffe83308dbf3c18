import { BlockList, isIP } from "node:net";
import type { Context } from "hono";
import { isLoopbackHost } from "../loopback.ts";

/** Where a request comes from, as far as it can be known. */
export interface Client {
  /** Address of the device; empty where the app is asked without a socket. */
  readonly address: string;
  /** Comes from this machine itself, through no proxy. */
  readonly isThisMachine: boolean;
  /** The device and the first proxy speak over TLS. */
  readonly isSecure: boolean;
  /** Path under which the proxy shows the house; empty at the root. */
  readonly prefix: string;
}

export interface ProxySettings {
  /** The name under which a proxy in front of the house is called; null without one. */
  readonly publicHost: string | null;
  /** Addresses or ranges from which the proxy asks; what others forward is not believed. */
  readonly trustedProxies: readonly string[];
  readonly basePath: string;
}

const PREFIX = /^(\/[\w.~-]+)+$/;

/** Reads the X-Forwarded fields, but only where they come from the proxy that the owner named. */
export function clientReader(settings: ProxySettings): (c: Context) => Client {
  const { basePath } = settings;
  const isProxy = proxyCheck(settings);
  return (c) => {
    const peer = peerOf(c);
    if (!isProxy(peer))
      return { address: peer, isThisMachine: isThisMachine(peer), isSecure: false, prefix: basePath };
    const forwarded = listOf(c.req.header("x-forwarded-for"));
    const prefix = c.req.header("x-forwarded-prefix")?.replace(/\/$/, "") ?? "";
    return {
      // From the near end: what stands before the last address that is no proxy was written by the device itself.
      address: forwarded.findLast((address) => !isProxy(address)) ?? peer,
      isThisMachine: forwarded.length === 0 && isThisMachine(peer),
      isSecure: listOf(c.req.header("x-forwarded-proto")).at(-1) === "https",
      prefix: PREFIX.test(prefix) && !prefix.includes("/..") ? prefix : basePath,
    };
  };
}

function proxyCheck({ publicHost, trustedProxies }: ProxySettings): (address: string) => boolean {
  const named = new BlockList();
  for (const range of trustedProxies) addRange(named, range);
  return (address) => {
    const family = isIP(address);
    if (family !== 0 && named.check(address, family === 4 ? "ipv4" : "ipv6")) return true;
    return publicHost !== null && trustedProxies.length === 0 && isThisMachine(address);
  };
}

function addRange(list: BlockList, range: string): void {
  const [address = "", bits] = range.split("/");
  const family = isIP(address) === 6 ? "ipv6" : "ipv4";
  list.addSubnet(address, bits === undefined ? (family === "ipv6" ? 128 : 32) : Number(bits), family);
}

function isThisMachine(address: string): boolean {
  return address === "" || isLoopbackHost(address);
}

/** IPv4 in its IPv6 dress (RFC 4291, 2.5.5.2) is the same address. */
function peerOf(c: Context): string {
  const { incoming } = (c.env ?? {}) as { incoming?: { socket?: { remoteAddress?: string } } };
  return incoming?.socket?.remoteAddress?.replace(/^::ffff:(?=\d+\.)/i, "") ?? "";
}

function listOf(header: string | undefined): string[] {
  return (header ?? "").split(",").flatMap((part) => (part.trim() === "" ? [] : [part.trim()]));
}
