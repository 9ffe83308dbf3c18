import { describe, expect, it } from "vitest";
import { type AddressKind, addressKind } from "../../../service/outgoing/address-kind.ts";

/**
 * First and last address of each block of the IANA IPv4 and IPv6 Special-Purpose Address Registries (set up by RFC 6890)
 * that is not globally reachable, and of multicast (RFC 5771, RFC 4291) and 240/4 (RFC 1112). Blocks from memory.
 */
const BLOCKS: readonly (readonly [block: string, first: string, last: string, kind: AddressKind])[] = [
  ["RFC 791 this network", "0.0.0.0", "0.255.255.255", "special"],
  ["RFC 1918 private use", "10.0.0.0", "10.255.255.255", "private"],
  ["RFC 6598 shared address space", "100.64.0.0", "100.127.255.255", "shared"],
  ["RFC 1122 loopback", "127.0.0.0", "127.255.255.255", "loopback"],
  ["RFC 3927 link local", "169.254.0.0", "169.254.255.255", "link-local"],
  ["RFC 1918 private use", "172.16.0.0", "172.31.255.255", "private"],
  ["RFC 6890 protocol assignments", "192.0.0.0", "192.0.0.255", "special"],
  ["RFC 5737 documentation", "192.0.2.0", "192.0.2.255", "special"],
  ["RFC 1918 private use", "192.168.0.0", "192.168.255.255", "private"],
  ["RFC 2544 benchmarking", "198.18.0.0", "198.19.255.255", "special"],
  ["RFC 5737 documentation", "198.51.100.0", "198.51.100.255", "special"],
  ["RFC 5737 documentation", "203.0.113.0", "203.0.113.255", "special"],
  ["RFC 5771 multicast", "224.0.0.0", "239.255.255.255", "special"],
  ["RFC 1112 reserved, RFC 919 broadcast", "240.0.0.0", "255.255.255.255", "special"],
  ["RFC 4291 unspecified", "::", "::", "special"],
  ["RFC 4291 loopback", "::1", "::1", "loopback"],
  ["RFC 4291 IPv4-mapped loopback", "::ffff:127.0.0.0", "::ffff:7fff:ffff", "loopback"],
  ["RFC 4291 IPv4-mapped private", "::ffff:10.0.0.1", "::ffff:c0a8:1", "private"],
  ["RFC 6052 translated private", "64:ff9b::10.0.0.0", "64:ff9b::aff:ffff", "private"],
  ["RFC 6052 translated link local", "64:ff9b::169.254.169.254", "64:ff9b::a9fe:a9fe", "link-local"],
  ["RFC 8215 local translation", "64:ff9b:1::", "64:ff9b:1:ffff:ffff:ffff:ffff:ffff", "private"],
  ["RFC 6666 discard only", "100::", "100::ffff:ffff:ffff:ffff", "special"],
  ["RFC 2928 protocol assignments, RFC 4380", "2001::", "2001:1ff:ffff:ffff:ffff:ffff:ffff:ffff", "special"],
  ["RFC 3849 documentation", "2001:db8::", "2001:db8:ffff:ffff:ffff:ffff:ffff:ffff", "special"],
  ["RFC 3056 6to4", "2002:7f00:1::", "2002:ffff:ffff:ffff:ffff:ffff:ffff:ffff", "special"],
  ["RFC 9637 documentation", "3fff::", "3fff:fff:ffff:ffff:ffff:ffff:ffff:ffff", "special"],
  ["RFC 4193 unique local", "fc00::", "fdff:ffff:ffff:ffff:ffff:ffff:ffff:ffff", "private"],
  ["RFC 4291 link local", "fe80::", "febf:ffff:ffff:ffff:ffff:ffff:ffff:ffff", "link-local"],
  ["RFC 4291 multicast", "ff00::", "ffff:ffff:ffff:ffff:ffff:ffff:ffff:ffff", "special"],
];

/** Neighbours of the blocks, and the addresses of well-known name servers, all globally reachable. */
const OPEN = [
  ...[
    "1.0.0.0",
    "9.255.255.255",
    "11.0.0.0",
    "100.63.255.255",
    "100.128.0.0",
    "126.255.255.255",
    "128.0.0.0",
  ],
  ...["169.253.255.255", "169.255.0.0", "172.15.255.255", "172.32.0.0", "192.167.255.255", "192.169.0.0"],
  ...[
    "198.17.255.255",
    "198.20.0.0",
    "223.255.255.255",
    "9.9.9.9",
    "2620:fe::fe",
    "2a00::",
    "64:ff9b::909:909",
  ],
  "::ffff:9.9.9.9",
];

describe("kind of an address", () => {
  it.each(BLOCKS)("%s: %s to %s is %s", (_block, first, last, kind) => {
    expect([addressKind(first), addressKind(last)]).toEqual([kind, kind]);
  });

  it.each(OPEN)("%s is public", (address) => {
    expect(addressKind(address)).toBe("public");
  });

  it("is told of an address with a scope, and of no text that is none", () => {
    expect(addressKind("fe80::1%eth0")).toBe("link-local");
    expect(["", "localhost", "2130706433", "0x7f.1", "1.2.3"].map(addressKind)).toEqual(
      Array(5).fill("special"),
    );
  });
});
