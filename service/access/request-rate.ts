import type { Context, MiddlewareHandler } from "hono";
import type { Client } from "./client.ts";

interface Allowance {
  left: number;
  atUtcMs: number;
}

/** Requests that one device may send at once, and how many more each second after. A page with its files takes six. */
const AT_ONCE = 300;
const A_SECOND = 30;
const MOST_REMEMBERED = 5000;
const TOO_MANY = 429;

/** Holds back a device that asks too fast. What runs on this machine is not counted: it could do worse than ask. */
export function requestRate(clientOf: (c: Context) => Client, now: () => number): MiddlewareHandler {
  const allowances = new Map<string, Allowance>();
  return async (c, next) => {
    const { address, isThisMachine } = clientOf(c);
    if (isThisMachine || takeOne(allowances, { address, nowUtcMs: now() })) return next();
    c.header("Retry-After", "1");
    return c.text("Too many requests at once. Wait a second and try again.\n", TOO_MANY);
  };
}

function takeOne(
  allowances: Map<string, Allowance>,
  { address, nowUtcMs }: { address: string; nowUtcMs: number },
): boolean {
  const before = allowances.get(address) ?? { left: AT_ONCE, atUtcMs: nowUtcMs };
  const grownBy = (Math.max(0, nowUtcMs - before.atUtcMs) / 1000) * A_SECOND;
  const left = Math.min(AT_ONCE, before.left + grownBy);
  allowances.delete(address);
  if (allowances.size >= MOST_REMEMBERED) allowances.delete(allowances.keys().next().value ?? "");
  allowances.set(address, { left: left < 1 ? left : left - 1, atUtcMs: nowUtcMs });
  return left >= 1;
}
