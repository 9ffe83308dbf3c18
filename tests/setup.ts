import { Socket } from "node:net";
import { afterEach, beforeEach, expect, type MockInstance, vi } from "vitest";

const LEVELS = ["log", "info", "warn", "error"] as const;
const LOOPBACK = /^(127\.|::1$|localhost$)/;

let spies: MockInstance[] = [];

/** Unexpected console output fails a test; one that expects output installs its own spy on top. */
beforeEach(() => {
  spies = LEVELS.map((level) => vi.spyOn(globalThis.console, level).mockImplementation(() => undefined));
});

afterEach(() => {
  const calls = spies.flatMap((spy) => spy.mock.calls);
  for (const spy of spies) spy.mockRestore();
  expect(calls, "console output that no test expected").toEqual([]);
});

/** No test leaves this machine: a socket to anywhere but loopback is an error that names the host. */
const connect = Socket.prototype.connect;
Socket.prototype.connect = function guarded(this: Socket, ...args: unknown[]) {
  const first = (Array.isArray(args[0]) ? args[0][0] : args[0]) as
    | { host?: string; path?: string }
    | undefined;
  const host = typeof first === "object" ? first.host : undefined;
  if (host !== undefined && !LOOPBACK.test(host) && !host.endsWith(".invalid")) {
    throw new Error(`A test tried to reach ${host}; tests talk to loopback only.`);
  }
  return Reflect.apply(connect, this, args);
} as typeof connect;
