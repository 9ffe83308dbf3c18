import { AIDS } from "../../plan/aid/aids.ts";
import { MINUTES_PER_TRIP } from "../../plan/choice/trouble.ts";
import type { Deed } from "../../plan/deed.ts";
import type { PotPlan } from "../../plan/pot-plan.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { type MorningDeed, NOTHING } from "../policies/policy.ts";
import type { Stage } from "../world/known-pot.ts";

/** What is due before the next morning's plan is done; what can wait for that plan waits. */
const UNTIL_NEXT_ROUND_H = 25;

/**
 * A line of the plan as its grower carries it out: the can in the morning's round, carries within the day, each at the
 * hour from which it may be done, a cover or a tilt until the day the plan names.
 */
export function deedOfRow(stage: Stage, row: PotPlan, nowUtcMs: number): MorningDeed {
  const due = [row as Deed, ...row.then].filter((deed) => isDue(deed, nowUtcMs));
  const water = due.find(({ action }) => action === "water");
  const carry = due.find(({ action }) => action === "carry-in" || action === "carry-out");
  const toSpot = carry === undefined ? -1 : stage.spots.findIndex(({ id }) => id === carry.toSpotId);
  const shield = shieldOf(due, nowUtcMs);
  if (water === undefined && toSpot < 0 && shield === null) return NOTHING;
  const fromMs = carry?.from === undefined ? nowUtcMs : Date.parse(carry.from);
  return {
    pourMl:
      water === undefined ? 0 : water.untilItRunsThrough ? Number.POSITIVE_INFINITY : (water.amountMl ?? 0),
    toSpot: toSpot < 0 ? null : toSpot,
    carryAfterH: Math.max(0, Math.round((fromMs - nowUtcMs) / HOUR_MS)),
    ...(shield === null || toSpot >= 0 ? {} : { shield }),
  };
}

/**
 * What a cover over the mix and a leant pot do, as the planner reckons with them; its other small aids (shade, bracing,
 * emptied saucers) are left undone.
 */
function shieldOf(due: readonly Deed[], nowUtcMs: number): MorningDeed["shield"] | null {
  const deed = due.find(({ action }) => action === "top-cover" || action === "tilt");
  if (deed === undefined) return null;
  const { takesFrac } = AIDS.find(({ action }) => action === deed.action)!;
  const lastMs = deed.until === undefined ? nowUtcMs : Date.parse(`${deed.until}T00:00:00Z`);
  return {
    letsInFrac: 1 - (takesFrac["wet-roots"] ?? 0),
    coldLeftFrac: 1 - (takesFrac.cold ?? 0),
    hours: 24 * Math.max(1, 1 + Math.floor((lastMs - nowUtcMs) / DAY_MS + 1)),
    trips: (deed.minutes ?? 0) / MINUTES_PER_TRIP,
  };
}

const DAY_MS = 24 * HOUR_MS;

function isDue(deed: Deed, nowUtcMs: number): boolean {
  const begins = deed.from === undefined ? nowUtcMs : Date.parse(deed.from);
  const ends = deed.by === undefined ? begins : Date.parse(deed.by);
  if (begins - nowUtcMs >= 24 * HOUR_MS) return false;
  // A carry out gains by being early, a carry in only by being in time.
  return deed.action !== "carry-in" || ends - nowUtcMs < UNTIL_NEXT_ROUND_H * HOUR_MS;
}
