import { potLift } from "../../plan/choice/pot-lift.ts";
import { canBeCarried, carryTrips, pourHarm, tripHarm } from "../../plan/choice/trouble.ts";
import type { Settings } from "../../plan/settings.ts";
import type { Stage } from "../world/known-pot.ts";
import type { WorldPot } from "../world/world-pot.ts";
import type { WorldState } from "../world/world-state.ts";

/** Trouble of doing things, in the planner's own prices. */
export interface Trouble {
  readonly stage: Stage;
  readonly settings: Pick<Settings, "tripWorth" | "liftLimitKg">;
}

/** What one carry of a pot as it stands comes to; null where nobody can carry it that way. */
export function carryOf(
  { stage, settings }: Trouble,
  pot: WorldPot,
  of: { state: Readonly<WorldState>; toSpot: number },
): { harm: number; trips: number; massKg: number } | null {
  const massKg = pot.dryMassKg + (of.state.upperMl + of.state.lowerMl) / 1000;
  const { liftLimitKg } = settings;
  const lift = potLift({
    massKg,
    vessel: pot.known.vessel,
    ...(liftLimitKg === undefined ? {} : { liftLimitKg }),
  });
  const way = { lift, from: stage.spots[of.state.spot]!, to: stage.spots[of.toSpot]! };
  if (!canBeCarried(way)) return null;
  const trips = carryTrips(way);
  return { trips, massKg, harm: trips * tripHarm(settings) };
}

/** Trouble of putting up a cover or leaning a pot. */
export function shieldTrouble({ settings }: Trouble, trips: number): number {
  return trips * tripHarm(settings);
}

/** Trouble of one pour of so much. */
export function pourTrouble({ settings }: Trouble, waterMl: number): number {
  return pourHarm(settings, waterMl);
}
