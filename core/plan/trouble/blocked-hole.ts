import type { PotNow } from "../../pot/pot-now.ts";
import { doubtsOfLate } from "./doubt-of-late.ts";

/** Days for which a hole is thought blocked after such a look; one that is still blocked shows again. Chosen by us. */
const LATELY_DAYS = 10;

/** Whether of late an observation fitted no course of the pot unless water cannot get out. */
export function mayBeBlocked(now: Pick<PotNow, "doubts" | "plantedUtcMs">, nowUtcMs: number): boolean {
  return doubtsOfLate(now, { nowUtcMs, days: LATELY_DAYS }).some(
    ({ question }) => question === "hole-blocked",
  );
}
