import { AIDS } from "../aid/aids.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import { carryTrips, MINUTES_PER_TRIP, pourTrips } from "../choice/trouble.ts";
import type { Deed } from "../deed.ts";
import { roundTo } from "./round-to.ts";
import { SAUCER_TRIPS } from "./small-deeds.ts";

/** A hole is found and cleared, roots are looked at, in trips. Chosen by us. */
const HOLE_TRIPS = 1;
const ROOTS_TRIPS = 3;
/** A mix that sheds water is given a little and left, over and over. Chosen by us. */
const SLOWLY_TIMES = 3;

/** The deed with the time that it takes for one pot, in minutes; the same trouble that was weighed against harm. */
export function withMinutes(of: { study: PotStudy; settled: Settled }, deed: Deed): Deed {
  const trips = tripsOf(of, deed);
  return trips === 0 ? deed : { ...deed, minutes: roundTo(trips * MINUTES_PER_TRIP, 0.1) };
}

function tripsOf({ study, settled }: { study: PotStudy; settled: Settled }, deed: Deed): number {
  const { lift, home, now } = study;
  switch (deed.action) {
    case "water":
      return pourTrips(deed.amountMl);
    case "soak-slowly":
      return SLOWLY_TIMES * pourTrips(deed.amountMl);
    case "carry-in":
    case "carry-out":
      return carryTrips({ lift, from: home.at.spot, to: settled.chosen!.away.spot });
    case "empty-saucer":
      return SAUCER_TRIPS;
    case "clear-hole":
      return HOLE_TRIPS;
    case "look-at-roots":
      return ROOTS_TRIPS;
    default:
      return AIDS.find(({ action }) => action === deed.action)?.trips({ lift, rimCm: now.vessel.topCm }) ?? 0;
  }
}
