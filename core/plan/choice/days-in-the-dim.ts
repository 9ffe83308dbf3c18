import type { Spot } from "../../site/spot.ts";

/** Days in the dim after which leaves are no longer used to the sun. Common practice. */
const UNUSED_AFTER_DAYS = 10;
/** How much brighter home must be. Chosen by us: twice. */
const BRIGHTER_BY = 2;
const DAY_MS = 86_400_000;

/** Whole days that a pot has stood where it is too dim to stay used to the sun of its home; null when it still is. */
export function daysInTheDim(stay: {
  hereSinceUtcMs: number | null;
  here: Pick<Spot, "sunFrac">;
  home: Pick<Spot, "sunFrac">;
  utcMs: number;
}): number | null {
  if (stay.hereSinceUtcMs === null) return null;
  const days = Math.floor((stay.utcMs - stay.hereSinceUtcMs) / DAY_MS);
  const brighter = stay.home.sunFrac / Math.max(0.01, stay.here.sunFrac);
  return days >= UNUSED_AFTER_DAYS && brighter >= BRIGHTER_BY ? days : null;
}
