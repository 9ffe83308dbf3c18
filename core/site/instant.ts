/** ISO 8601 in UTC, to the minute, e.g. "2026-11-25T14:00Z". */
export type Instant = string;

/** ISO 8601 in UTC to the minute, as plans carry it. */
export function instantOf(utcMs: number): Instant {
  return `${new Date(utcMs).toISOString().slice(0, 16)}Z`;
}
