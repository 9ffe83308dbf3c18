import { expect, it } from "vitest";
import { isHomeName } from "../../../service/outgoing/home-name.ts";

// RFC 6761, 6762 and 8375 for the endings; ICANN board resolution of July 2024 for "internal" (from memory).
it.each([
  ["127.0.0.1", true],
  ["[fd00::1]", true],
  ["localhost", true],
  ["Broker", true],
  ["broker.local.", true],
  ["a.b.home.arpa", true],
  ["broker.internal", true],
  ["broker.example", false],
  ["notlocal.example", false],
  ["mylocal", true],
  ["broker.mylocal", false],
  ["local.example", false],
])("%s can only be at home: %s", (host, is) => {
  expect(isHomeName(host)).toBe(is);
});
