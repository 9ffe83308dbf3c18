import type { PotPlan } from "../../plan/pot-plan.ts";
import type { DayAxis } from "../hours/day-axis.ts";
import type { PotCourse } from "../season/pot-course.ts";
import { emptyHarm } from "../season/season-result.ts";
import { runWorldHours } from "../world/run-hours.ts";
import type { WorldClock } from "../world/world-clock.ts";
import { copyState } from "../world/world-state.ts";
import { addOutcome, emptyReliability, type Reliability } from "./reliability.ts";

/** What the planner believed against what was, gathered over a season. */
export interface Belief {
  /** "At its refill point by tonight if nothing is done", as the outlook tells it. */
  readonly refill: Reliability;
  /** "1 mm or more today", as the day's outline tells it. */
  readonly rain: Reliability;
  /** By month of the year: error of the content believed, share of capacity, and how often the truth lay within the band of 80 %. */
  readonly contentErrorSum: number[];
  readonly withinCount: number[];
  readonly count: number[];
}

export function emptyBelief(): Belief {
  const months = () => new Array<number>(12).fill(0);
  return {
    refill: emptyReliability(),
    rain: emptyReliability(),
    contentErrorSum: months(),
    withinCount: months(),
    count: months(),
  };
}

/** Holds one pot's line of a plan against the true pot, before anything is done to it. */
export function watchPot(
  belief: Belief,
  of: { row: PotPlan; course: PotCourse; day: number; month: number; axis: DayAxis; clock: WorldClock },
): void {
  const { course, row, month } = of;
  const { state, pot } = course;
  const trueFrac = (state.upperMl + state.lowerMl) / pot.capacityMl;
  const { low, mid, high } = row.outlook.nowFrac;
  belief.contentErrorSum[month]! += Math.abs(mid - trueFrac);
  // The band is told to a hundredth.
  if (trueFrac >= low - 0.005 && trueFrac <= high + 0.005) belief.withinCount[month]!++;
  belief.count[month]!++;
  const told = row.outlook.reachesRefillShareFrac[0];
  if (told !== undefined) addOutcome(belief.refill, told, reachesRefill(of));
}

/** Whether the true pot, left alone, is at its refill point at the end of the local day. */
function reachesRefill(of: { course: PotCourse; day: number; axis: DayAxis; clock: WorldClock }): boolean {
  const { course, clock, day } = of;
  const { pot } = course;
  const state = copyState(course.state);
  const span = { fromHour: clock.roundHour[day]!, toHour: of.axis.days[day]!.toHour };
  const into = { harm: emptyHarm(), pouredMl: 0, drainedMl: 0 };
  runWorldHours({ clock, pot }, state, { ...span, deeds: [], into });
  return (state.upperMl + state.lowerMl - pot.unusableMl) / pot.usableMl <= state.refillFrac;
}
