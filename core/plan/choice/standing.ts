import type { SpotDays } from "../days/spot-days.ts";
import { totalHarm } from "../harm/course.ts";
import { type Stander, spotHarm } from "../harm/spot-harm.ts";
import type { HarmByTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { rainRelief } from "./rain-relief.ts";
import { type RolledCourse, rollCourse, stayingAt } from "./roll-course.ts";
import type { WaitCosts } from "./wait-for-water.ts";
import { waitFor } from "./water-choice.ts";
import { wettingWeights } from "./wetting-weight.ts";

/** Harm of a day away from its own place: in the way, out of sight, turned from its light. Chosen by us. */
export const AWAY_HARM_PER_DAY = 0.0005;

/** What standing at one spot throughout would do to a pot. */
export interface Standing {
  readonly at: SpotDays;
  /** Expected harm by day that the spot does by itself. */
  readonly bySpot: HarmByTerm;
  /** Expected harm over the horizon by way of water, thirst apart. */
  readonly wet: Readonly<Record<"wet-roots" | "wet-wound" | "wet-cold", Float64Array>>;
  readonly thirst: Float64Array;
  readonly wait: WaitCosts;
  /** How much each day's wetting weighs, for roots and for fresh cuts. */
  readonly weights: { readonly roots: Float64Array; readonly wound: Float64Array };
}

/** Sums up what a roll-out at one spot says, so that the roll-out itself can be written over. */
export function standingOf(
  context: PlanContext,
  input: { stander: Stander; at: SpotDays; isHome: boolean; rolled: RolledCourse },
): Standing {
  const { at, rolled } = input;
  const relief = rainRelief(rolled.course);
  const away = new Float64Array(context.days.length).fill(input.isHome ? 0 : AWAY_HARM_PER_DAY);
  return {
    at,
    bySpot: { ...spotHarm(context.book, at, input.stander), away },
    wet: {
      "wet-roots": rolled.harm["wet-roots"].byDay,
      "wet-wound": rolled.harm["wet-wound"].byDay,
      "wet-cold": rolled.harm["wet-cold"].byDay,
    },
    thirst: rolled.harm.thirst.byDay,
    wait: waitFor(context, { rolled, relief }),
    weights: wettingWeights(rolled.course),
  };
}

/** Rolls a pot out at a spot where it does not stand, and sums it up. */
export function standingAt(
  context: PlanContext,
  { stander, at, isHome }: { stander: Stander; at: SpotDays; isHome: boolean },
): Standing {
  const rolled = rollCourse(context, { now: stander.now, doings: stayingAt(at), scratch: "tried" });
  return standingOf(context, { stander, at, isHome, rolled });
}

/** Harm over the horizon of standing there throughout, the next water given when it costs least. */
export function standingHarm({ bySpot, wet, wait }: Standing): number {
  let sum = wait.byMorning[wait.best]!;
  for (const column of [...Object.values(bySpot), ...Object.values(wet)]) {
    sum += totalHarm({ byDay: column });
  }
  return sum;
}
