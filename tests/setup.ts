import { Socket } from "node:net";
import process from "node:process";
import { afterAll, afterEach, beforeAll, beforeEach, expect, type MockInstance, vi } from "vitest";

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

/** Files share a process: one that leaves the clock, the environment or the folder changed fails. */
let before = {};

beforeAll(() => {
  before = sharedState();
});

afterAll(() => {
  expect(sharedState(), "what the process was before this file").toEqual(before);
});

function sharedState() {
  const stdin = Object.getOwnPropertyDescriptor(process, "stdin")?.get;
  const { fetch } = globalThis;
  // Some names only: packages set their own, and a failure prints what differs.
  const env = Object.entries(process.env).filter(([name]) => /^(LEEBENCH_|NODE_|TZ$|HOME$|PATH$)/.test(name));
  return { env, cwd: process.cwd(), isClockFake: vi.isFakeTimers(), stdin, fetch };
}

/** No test leaves this machine: a socket to anywhere but loopback is an error that names the host. */
const connect = Socket.prototype.connect;
const guarded: typeof connect = function guarded(this: Socket, ...args: unknown[]) {
  const first = (Array.isArray(args[0]) ? args[0][0] : args[0]) as
    | { host?: string; path?: string }
    | undefined;
  const host = typeof first === "object" ? first.host : undefined;
  if (host !== undefined && !LOOPBACK.test(host) && !host.endsWith(".invalid")) {
    throw new Error(`A test tried to reach ${host}; tests talk to loopback only.`);
  }
  return Reflect.apply(connect, this, args);
} as typeof connect;
// Files that share a process set it once.
if (connect.name !== guarded.name) Socket.prototype.connect = guarded;
