import { dayAxis } from "../../../../core/replay/hours/day-axis.ts";
import { hoursOfDays } from "../../../../core/replay/hours/hours-of-days.ts";
import { placeNormals } from "../../../../core/replay/policies/place-normals.ts";
import type { MorningView, PotView } from "../../../../core/replay/policies/policy.ts";
import { gardenAt } from "../../../../core/replay/stage/garden.ts";
import { knownPots } from "../../../../core/replay/world/known-pot.ts";
import type { CalendarDay } from "../../../../core/site/site.ts";
import { BUILT_IN_PLACES, daysOfPlace } from "../../../../service/replay/built-in-places.ts";

const daily = daysOfPlace(BUILT_IN_PLACES[0]!);
const axis = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);

export const STAGE = gardenAt(daily.site);
export const [YARD, PORCH, ROOM] = [0, 1, 2] as const;
const KNOWN = knownPots(STAGE);
const NORMALS = placeNormals({ daily, hours: hoursOfDays(daily, 1), axis });

/** A pot that lacks nothing, in the yard. */
export function somePot(groupId: string, change: Partial<PotView> = {}): PotView {
  return {
    known: KNOWN.find(({ pot }) => pot.groupId === groupId)!,
    spot: YARD,
    sinceWaterDays: 1,
    sincePlantedDays: Number.POSITIVE_INFINITY,
    roots: "settled",
    feel: () => "heavy",
    dryToCm: () => 0,
    ...change,
  };
}

/** A mild dry morning in Seattle's July. */
export function someMorning(
  pots: readonly PotView[],
  change: Partial<Omit<MorningView, "pots" | "outlook">> & { outlook?: Partial<MorningView["outlook"]> } = {},
): MorningView {
  return {
    day: 200,
    date: "2014-07-20" as CalendarDay,
    month: 6,
    nowUtcMs: Date.UTC(2014, 6, 20, 14),
    normals: NORMALS,
    pots,
    ...change,
    outlook: {
      rainMm: [0, 0, 0, 0],
      wetShareFrac: [0, 0, 0, 0],
      coldestC: [14, 14, 14, 14],
      yesterday: { rainMm: 0, et0Mm: 5 },
      ...change.outlook,
    },
  };
}
