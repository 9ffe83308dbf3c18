import { AIDS } from "../aid/aids.ts";
import { aidedPot } from "../aid/choose-aids.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { carryTrips, MINUTES_PER_TRIP, pourTrips } from "../choice/trouble.ts";
import type { Deed } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { roundTo } from "./round-to.ts";
import { SAUCER_TRIPS } from "./small-deeds.ts";

/** A hole is found and cleared, roots are looked at, in trips. Chosen by us. */
const HOLE_TRIPS = 1;
const ROOTS_TRIPS = 3;
/** A mix that sheds water is given a little and left, over and over. Chosen by us. */
const SLOWLY_TIMES = 3;

/** The deed with the time that it takes for one pot, in minutes; the same trouble that was weighed against harm. */
export function withMinutes(context: PlanContext, study: PotStudy, deed: Deed): Deed {
  const trips = tripsOf(context, study, deed);
  return trips === 0 ? deed : { ...deed, minutes: roundTo(trips * MINUTES_PER_TRIP, 0.1) };
}

function tripsOf({ spots, days }: PlanContext, study: PotStudy, deed: Deed): number {
  switch (deed.action) {
    case "water":
      return pourTrips(deed.amountMl);
    case "soak-slowly":
      return SLOWLY_TIMES * pourTrips(deed.amountMl);
    case "carry-in":
    case "carry-out":
      return carryTrips({ lift: study.lift, from: study.home.at.spot, to: elsewhere(study, deed, spots) });
    case "empty-saucer":
      return SAUCER_TRIPS;
    case "clear-hole":
      return HOLE_TRIPS;
    case "look-at-roots":
      return ROOTS_TRIPS;
    default: {
      const aid = AIDS.find(({ action }) => action === deed.action);
      return aid?.trips(aidedPot(study, { fromDay: 0, toDay: days.length })) ?? 0;
    }
  }
}

/** The other end of a carry: a pot goes out to its home, and in from it. */
function elsewhere({ home, here }: PotStudy, { toSpotId }: Deed, spots: PlanContext["spots"]) {
  const to = spots.get(toSpotId!)!;
  return (to === home.at ? here.at : to).spot;
}
