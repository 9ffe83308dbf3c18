/**
 * Calls that one host may get from this process in a UTC day. Chosen by us because a site needs some 20 and the
 * primary feed allows 10,000 weighted calls, of which an ensemble of 51 members takes about 30 each time.
 */
export const DAILY_CALL_CAP = 300;

const DAY_MS = 86_400_000;

/** The last line against a loop gone wild: kept here and not in any state that a caller could forget to pass on. */
const callsOfDay = new Map<string, { utcDay: number; calls: number }>();

/** Counts one call to the host; false when its day is spent and the call must not be made. */
export function takeCall(origin: string, rule: { nowUtcMs: number; cap: number }): boolean {
  const utcDay = Math.floor(rule.nowUtcMs / DAY_MS);
  const known = callsOfDay.get(origin);
  const entry = known?.utcDay === utcDay ? known : { utcDay, calls: 0 };
  callsOfDay.set(origin, entry);
  if (entry.calls >= rule.cap) return false;
  entry.calls += 1;
  return true;
}
