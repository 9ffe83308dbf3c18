import type { Deed, PotPlan } from "../../plan/plan.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { type MorningDeed, NOTHING } from "../policies/policy.ts";
import type { Stage } from "../world/known-pot.ts";

/** What is due before the next morning's plan is done; what can wait for that plan waits. */
const UNTIL_NEXT_ROUND_H = 25;

/**
 * What a cover over the mix and a leant pot do, as the planner reckons with them; its other small aids (shade, bracing,
 * emptied saucers) are left undone.
 */
const SHIELDS = {
  "top-cover": { letsInFrac: 0.2, coldLeftFrac: 0.5, trips: 0.5 },
  tilt: { letsInFrac: 0.5, coldLeftFrac: 1, trips: 0.2 },
} as const;

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

function shieldOf(due: readonly Deed[], nowUtcMs: number): MorningDeed["shield"] | null {
  const aid = due.find(({ action }) => action === "top-cover" || action === "tilt");
  if (aid === undefined) return null;
  const lastMs = aid.until === undefined ? nowUtcMs : Date.parse(`${aid.until}T00:00:00Z`);
  const days = Math.max(1, 1 + Math.floor((lastMs - nowUtcMs) / DAY_MS + 1));
  return { ...SHIELDS[aid.action as keyof typeof SHIELDS], hours: 24 * days };
}

const DAY_MS = 24 * HOUR_MS;

function isDue(deed: Deed, nowUtcMs: number): boolean {
  const begins = deed.from === undefined ? nowUtcMs : Date.parse(deed.from);
  const ends = deed.by === undefined ? begins : Date.parse(deed.by);
  if (begins - nowUtcMs >= 24 * HOUR_MS) return false;
  // A carry out gains by being early, a carry in only by being in time.
  return deed.action !== "carry-in" || ends - nowUtcMs < UNTIL_NEXT_ROUND_H * HOUR_MS;
}
