import type { PotNow } from "../../pot/pot-now.ts";
import { type Launch, launchOf, rollOut } from "../../pot/roll-out.ts";
import type { Pour, Stretch } from "../../pot/trajectory.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Course, HarmTally } from "../harm/course.ts";
import type { WaterTerm } from "../harm/term.ts";
import { thirst } from "../harm/thirst.ts";
import { wetCold } from "../harm/wet-cold.ts";
import { wetRoots } from "../harm/wet-roots.ts";
import { wetWound } from "../harm/wet-wound.ts";
import type { PlanContext } from "../plan-context.ts";

/**
 * A course rolled out and the harm of its water. Its trajectory and what is told by particle last until the same
 * scratch is written over; what is told by day stays.
 */
export interface RolledCourse {
  readonly course: Course;
  readonly harm: Readonly<Record<WaterTerm, HarmTally>>;
}

/** Where a pot stands on each plan day and what it is given. */
export interface Doings {
  readonly spotByDay: readonly SpotDays[];
  readonly stretches: readonly Stretch[];
  readonly pours: readonly Pour[];
}

/** Standing at one spot throughout. */
export function stayingAt(at: SpotDays): Doings {
  return {
    spotByDay: at.days.map(() => at),
    stretches: [{ fromHour: 0, forcing: at.forcing }],
    pours: [],
  };
}

/** Rolls a pot's cloud out along a course of action and reckons the harm of its water. */
export function rollCourse(
  context: PlanContext,
  input: { now: PotNow; doings: Doings; scratch: keyof PlanContext["scratch"] },
): RolledCourse {
  const { hourCount, days, dayOfHour, startUtcMs } = context;
  const { now, doings } = input;
  const { stretches, pours } = doings;
  const from = readied(context, now);
  const scratch = context.scratch[input.scratch];
  const trajectory = rollOut({ now, hourCount, stretches, pours, from }, scratch.trajectory);
  const course: Course = { now, stretches, trajectory, startUtcMs, days, dayOfHour };
  const tally = (term: WaterTerm): HarmTally => ({
    byDay: new Float64Array(days.length),
    byParticle: scratch.harm[term].fill(0),
  });
  const harm = {
    thirst: tally("thirst"),
    "wet-roots": tally("wet-roots"),
    "wet-wound": tally("wet-wound"),
    "wet-cold": tally("wet-cold"),
  };
  thirst(course, harm.thirst);
  wetRoots(course, harm["wet-roots"]);
  wetWound(course, harm["wet-wound"]);
  wetCold(course, doings.spotByDay, harm["wet-cold"]);
  return { course, harm };
}

function readied({ launch }: PlanContext, now: PotNow): Launch {
  if (launch.last?.now !== now) launch.last = launchOf(now, launch.last);
  return launch.last;
}
