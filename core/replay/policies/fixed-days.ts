import type { Stage } from "../world/known-pot.ts";
import { calendarSpot } from "./calendar-cover.ts";
import { hasFreshCut } from "./fresh-cut.ts";
import type { MorningView, Policy, PotView } from "./policy.ts";

/** Days between waterings by kind of plant and half of the year. Common practice of people who water by the calendar. */
const EVERY_DAYS = {
  leafy: { warm: 2, cool: 7 },
  succulent: { warm: 7, cool: 28 },
} as const;
/** Rain of today and tomorrow for which the can is left, mm. */
const SKIP_MM = 5;

/** Fixed days by season, in the cold time indoors by the calendar; `skips` leaves the can when rain is forecast. */
export function fixedDays({ skips }: { skips: boolean }): Policy {
  return {
    id: skips ? "fixed-days-rain-skip" : "fixed-days",
    begin: (stage) => ({
      morning: (view) =>
        view.pots.map((pot) => ({
          pourMl: isDue(stage, view, { pot, skips }) ? Number.POSITIVE_INFINITY : 0,
          toSpot: calendarSpot(stage, view, pot),
        })),
    }),
  };
}

function isDue(stage: Stage, view: MorningView, of: { pot: PotView; skips: boolean }): boolean {
  const { pot } = of;
  if (hasFreshCut(pot)) return false;
  const kind = EVERY_DAYS[pot.known.values.leafy ? "leafy" : "succulent"];
  const warm = view.month >= 4 && view.month <= 8;
  if (pot.sinceWaterDays < (warm ? kind.warm : kind.cool)) return false;
  const inOpen = stage.spots[pot.spot]!.kind === "open";
  const [today = 0, tomorrow = 0] = view.outlook.rainMm;
  return !(of.skips && inOpen && today + tomorrow >= SKIP_MM);
}
