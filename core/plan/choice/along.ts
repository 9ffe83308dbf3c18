import type { Stretch } from "../../pot/trajectory.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Stander } from "../harm/spot-harm.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryInSpan, carryOutSpan } from "./carry-hours.ts";
import type { CarryOption } from "./carry-options.ts";
import { legsOf, purposesOf } from "./legs.ts";
import type { Doings } from "./roll-course.ts";

/** A way of spending the horizon as a course to roll out: carried in as late, and out as early, as the plan says. */
export function along(
  context: PlanContext,
  { stander, home, option }: { stander: Stander; home: SpotDays; option: CarryOption },
): Doings {
  const stretches: Stretch[] = [];
  for (const leg of legsOf(option.days)) {
    const place = { stander, homeAt: home, day: leg.fromDay };
    const hour = leg.away
      ? (carryInSpan(context, { ...place, terms: purposesOf(option, leg) })?.byHour ?? 0)
      : (carryOutSpan(context, place)?.fromHour ?? 0);
    const from = stretches.length === 0 ? 0 : Math.max(hour, stretches.at(-1)!.fromHour + 1);
    stretches.push({ fromHour: from, forcing: (leg.away ? option.away : home).forcing });
  }
  return { stretches, pours: [], spotByDay: option.days.map((away) => (away ? option.away : home)) };
}
