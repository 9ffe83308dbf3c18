import { expect, it } from "vitest";
import { redirectOnHost } from "../../../service/outgoing/redirect-on-host.ts";

it.each([
  ["http://a.example/x", "/y", "http://a.example/y"],
  ["http://a.example/x", "https://a.example/y", "https://a.example/y"],
  ["http://a.example/x", "//A.EXAMPLE/y", "http://a.example/y"],
  ["https://a.example/x", "http://a.example/y", null],
  ["http://a.example/x", "http://b.example/y", null],
  ["http://a.example/x", "http://sub.a.example/y", null],
  ["http://a.example/x", "http://a.example:8080/y", null],
  ["http://a.example:8080/x", "https://a.example:8443/y", null],
  ["http://a.example/x", "//b.example/y", null],
  ["http://a.example/x", "file:///etc/hosts", null],
  ["http://a.example/x", "http://a.example@b.example/", null],
  ["http://a.example/x", "http://", null],
])("from %s to %s: %s", (from, location, to) => {
  expect(redirectOnHost(location, new URL(from))?.href ?? null).toBe(to);
});
