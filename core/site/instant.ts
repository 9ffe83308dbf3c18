import type { Instant } from "../plan/plan.ts";

/** ISO 8601 in UTC to the minute, as plans carry it. */
export function instantOf(utcMs: number): Instant {
  return `${new Date(utcMs).toISOString().slice(0, 16)}Z`;
}
