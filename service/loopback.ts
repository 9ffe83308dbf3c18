import { BlockList, isIP } from "node:net";

const LOOPBACK = new BlockList();
LOOPBACK.addSubnet("127.0.0.0", 8, "ipv4");
LOOPBACK.addAddress("::1", "ipv6");

/** Whether a server bound to this host name or address can be reached from this machine alone. */
export function isLoopbackHost(host: string): boolean {
  const family = isIP(host);
  if (family === 0) return host.toLowerCase() === "localhost";
  return LOOPBACK.check(host, family === 4 ? "ipv4" : "ipv6");
}
