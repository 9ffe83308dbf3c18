import { calendarSpot, roofOf } from "./calendar-cover.ts";
import { isDryToFinger } from "./finger.ts";
import { halfMonthOf } from "./place-normals.ts";
import type { Policy } from "./policy.ts";

/** Under the roof in the half months in which more rain falls than evaporates, indoors in the cold; water by the finger. */
export const wetMonths: Policy = {
  id: "under-cover-in-wet-months",
  begin: (stage) => ({
    morning: (view) =>
      view.pots.map((pot) => {
        const half = halfMonthOf(view.date);
        const wet = view.normals.rainMmPerDay[half]! > view.normals.et0MmPerDay[half]!;
        const byCold = calendarSpot(stage, view, pot) ?? pot.spot;
        const wanted = byCold === pot.known.homeSpot && wet ? roofOf(stage, pot) : byCold;
        return {
          pourMl: isDryToFinger(pot) ? Number.POSITIVE_INFINITY : 0,
          toSpot: wanted === pot.spot ? null : wanted,
        };
      }),
  }),
};
