import type { Deed, PotPlan } from "../../plan/plan.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { type MorningDeed, NOTHING } from "../policies/policy.ts";
import type { Stage } from "../world/known-pot.ts";

/** What is due before the next morning's plan is done; what can wait for that plan waits. */
const UNTIL_NEXT_ROUND_H = 25;

/**
 * A line of the plan as its grower carries it out: the can in the morning's round, carries within the day, each at the
 * hour from which it may be done. Small aids (shade, bracing, a cover) are left undone, as no policy here does them.
 */
export function deedOfRow(stage: Stage, row: PotPlan, nowUtcMs: number): MorningDeed {
  const due = [row as Deed, ...row.then].filter((deed) => isDue(deed, nowUtcMs));
  const water = due.find(({ action }) => action === "water");
  const carry = due.find(({ action }) => action === "carry-in" || action === "carry-out");
  const toSpot = carry === undefined ? -1 : stage.spots.findIndex(({ id }) => id === carry.toSpotId);
  if (water === undefined && toSpot < 0) return NOTHING;
  const fromMs = carry?.from === undefined ? nowUtcMs : Date.parse(carry.from);
  return {
    pourMl:
      water === undefined ? 0 : water.untilItRunsThrough ? Number.POSITIVE_INFINITY : (water.amountMl ?? 0),
    toSpot: toSpot < 0 ? null : toSpot,
    carryAfterH: Math.max(0, Math.round((fromMs - nowUtcMs) / HOUR_MS)),
  };
}

function isDue(deed: Deed, nowUtcMs: number): boolean {
  const begins = deed.from === undefined ? nowUtcMs : Date.parse(deed.from);
  const ends = deed.by === undefined ? begins : Date.parse(deed.by);
  if (begins - nowUtcMs >= 24 * HOUR_MS) return false;
  // A carry out gains by being early, a carry in only by being in time.
  return deed.action !== "carry-in" || ends - nowUtcMs < UNTIL_NEXT_ROUND_H * HOUR_MS;
}
