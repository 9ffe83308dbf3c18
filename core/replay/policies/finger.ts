import { calendarSpot } from "./calendar-cover.ts";
import { hasFreshCut } from "./fresh-cut.ts";
import type { Policy, PotView } from "./policy.ts";

/** A finger's length for leafy plants; a stick's reach for those that store water. Common practice. */
const DRY_CM = { leafy: 3, succulent: 6 } as const;

/** Water when the top is dry to the finger, in the cold time indoors by the calendar. */
export const finger: Policy = {
  id: "dry-to-the-finger",
  begin: (stage) => ({
    morning: (view) =>
      view.pots.map((pot) => ({
        pourMl: isDryToFinger(pot) ? Number.POSITIVE_INFINITY : 0,
        toSpot: calendarSpot(stage, view, pot),
      })),
  }),
};

export function isDryToFinger(pot: PotView): boolean {
  if (hasFreshCut(pot)) return false;
  return pot.dryToCm() >= DRY_CM[pot.known.values.leafy ? "leafy" : "succulent"];
}
