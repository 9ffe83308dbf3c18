import { BlockList, isIP } from "node:net";

/** What an IP address leads to. "special" is nothing that a service of ours ever has to call. */
export type AddressKind = "public" | "loopback" | "private" | "shared" | "link-local" | "special";
type ClosedKind = Exclude<AddressKind, "public">;

/** [RFC6890 and the IANA special-purpose registries it set up] */
const CLOSED_IPV4: readonly (readonly [ClosedKind, string, number])[] = [
  ["loopback", "127.0.0.0", 8],
  ["private", "10.0.0.0", 8],
  ["private", "172.16.0.0", 12],
  ["private", "192.168.0.0", 16],
  ["shared", "100.64.0.0", 10],
  ["link-local", "169.254.0.0", 16],
  ["special", "0.0.0.0", 8],
  ["special", "192.0.0.0", 24],
  ["special", "192.0.2.0", 24],
  ["special", "192.88.99.0", 24],
  ["special", "198.18.0.0", 15],
  ["special", "198.51.100.0", 24],
  ["special", "203.0.113.0", 24],
  ["special", "224.0.0.0", 3],
];

const CLOSED_IPV6: readonly (readonly [ClosedKind, string, number])[] = [
  ["loopback", "::1", 128],
  ["private", "fc00::", 7],
  ["private", "fec0::", 10],
  ["private", "64:ff9b:1::", 48],
  ["link-local", "fe80::", 10],
  ["special", "2001::", 23],
  ["special", "2001:db8::", 32],
  ["special", "2002::", 16],
  ["special", "3fff::", 20],
];

/** An IPv4 address behind a translator of the network (NAT64); one inside "::ffff:" is known to BlockList itself. */
const TRANSLATED = "64:ff9b::";
const TRANSLATED_BITS = 96;

const CLOSED = new Map<ClosedKind, BlockList>();
for (const [kind, net, bits] of CLOSED_IPV4) {
  blockList(kind).addSubnet(net, bits, "ipv4");
  blockList(kind).addSubnet(TRANSLATED + net, TRANSLATED_BITS + bits, "ipv6");
}
for (const [kind, net, bits] of CLOSED_IPV6) blockList(kind).addSubnet(net, bits, "ipv6");

/** The only part of IPv6 from which public addresses are given out so far, with what stands for IPv4 addresses. */
const OPEN_IPV6 = new BlockList();
OPEN_IPV6.addSubnet("2000::", 3, "ipv6");
OPEN_IPV6.addSubnet(TRANSLATED, TRANSLATED_BITS, "ipv6");
OPEN_IPV6.addSubnet("::ffff:0:0", 96, "ipv6");

/** What the address leads to; a text that is no IP address is "special". */
export function addressKind(address: string): AddressKind {
  const [bare = ""] = address.split("%");
  const family = isIP(bare);
  if (family === 0) return "special";
  const type = family === 4 ? "ipv4" : "ipv6";
  for (const [kind, list] of CLOSED) if (list.check(bare, type)) return kind;
  return family === 4 || OPEN_IPV6.check(bare, "ipv6") ? "public" : "special";
}

function blockList(kind: ClosedKind): BlockList {
  const list = CLOSED.get(kind) ?? new BlockList();
  CLOSED.set(kind, list);
  return list;
}
