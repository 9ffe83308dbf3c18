import { lacksRoom } from "../choice/choose-places.ts";
import { fits, isMoreSheltered, mostAvoided, type PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import { canBeCarried, carryTrips, tripHarm } from "../choice/trouble.ts";
import type { Reason } from "../deed.ts";
import { spotHarm } from "../harm/spot-harm.ts";
import type { PlanContext } from "../plan-context.ts";

/** Why a pot that a carry would help stays where it is: no place is left for it, or nobody can carry it; else null. */
export function notCarried(context: PlanContext, study: PotStudy, settled: Settled): Reason | null {
  if (lacksRoom(settled)) return { code: "no-room", numbers: {} };
  const { here, home, lift, options } = study;
  if (here !== home || options.length > 0 || lift.hands !== "trolley") return null;
  return missesShelter(context, study) ? { code: "too-heavy", numbers: { massKg: lift.massKg } } : null;
}

/** Whether a spot that it cannot be carried to would save more than the carries there and back. */
function missesShelter(
  { spots, settings, book }: PlanContext,
  { here, lift, now, stander }: PotStudy,
): boolean {
  return [...spots.values()].some((at) => {
    const way = { lift, from: here.at.spot, to: at.spot };
    if (canBeCarried(way) || !isMoreSheltered(at.spot, here.at.spot) || !fits(at.spot, now)) return false;
    return mostAvoided(here, spotHarm(book, at, stander)) > 2 * carryTrips(way) * tripHarm(settings);
  });
}
