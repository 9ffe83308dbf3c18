import type { PotNow } from "../../pot/pot-now.ts";
import { doubtsOfLate } from "./doubt-of-late.ts";

/** Days for which such a look speaks against the can. Chosen by us: a thirsty pot dries in little more, and is felt again. */
const SPEAKS_DAYS = 2;

/**
 * When the pot was last found wetter than any of its versions, nothing having been poured since; null when it was not.
 * Somebody watered it unnoted or water cannot get out: what its versions hold is no reason for more.
 */
export function foundWetterUtcMs(now: PotNow, nowUtcMs: number): number | null {
  const wateredUtcMs = now.lastWateredUtcMs ?? Number.NEGATIVE_INFINITY;
  const found = doubtsOfLate(now, { nowUtcMs, days: SPEAKS_DAYS }).filter(
    ({ wetter, atUtcMs }) => wetter && atUtcMs > wateredUtcMs,
  );
  return found.at(-1)?.atUtcMs ?? null;
}
