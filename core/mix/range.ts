import type { Ranged } from "./component.ts";

/** A central value between its ends. */
export function range(low: number, mid: number, high: number): Ranged {
  if (!(low <= mid && mid <= high)) throw new RangeError(`range ${low} ${mid} ${high} is not in order`);
  return { low, mid, high };
}
