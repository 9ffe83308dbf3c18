import type { Typed } from "./form-problems.ts";

/** Older claims are not believed; chosen by us: a holiday without signal. */
const LONGEST_MS = 31 * 86_400_000;

/** When a form was filled in: later than sent where it had to wait on the device for a signal. */
export function filledInUtcMs({ happenedAtUtcMs }: Typed, nowUtcMs: number): number {
  const claimed = Number(happenedAtUtcMs);
  const believable = Number.isSafeInteger(claimed) && claimed <= nowUtcMs && claimed > nowUtcMs - LONGEST_MS;
  return believable ? claimed : nowUtcMs;
}
