import type { SpotDays } from "../days/spot-days.ts";
import { type Course, emptyTally, type HarmTally, totalHarm } from "../harm/course.ts";
import { type Stander, spotHarm } from "../harm/spot-harm.ts";
import type { HarmByTerm, WetTerm } from "../harm/term.ts";
import { wetCold } from "../harm/wet-cold.ts";
import type { PlanContext } from "../plan-context.ts";
import { type RolledCourse, rollCourse, stayingAt } from "./roll-course.ts";
import type { WaitCosts } from "./wait-for-water.ts";
import { waitFor } from "./water-choice.ts";
import { type WaterPass, waterPass } from "./water-pass.ts";

/**
 * Harm of a day away from its own place: in the way, out of sight, turned from its light. Chosen by us: half a trip of
 * 10 kg, so that a pot is neither carried in days before it need be nor left in for days after.
 */
export const AWAY_HARM_PER_DAY = 0.002;

/** What standing at one spot throughout would do to a pot. */
export interface Standing {
  readonly at: SpotDays;
  /** Expected harm by day that the spot does by itself. */
  readonly bySpot: HarmByTerm;
  /** Expected harm over the horizon by way of water, thirst apart. */
  readonly wet: Readonly<Record<WetTerm, Float64Array>>;
  /** What the same water would do in the nights of the place where the pot stands now, if that is another. */
  readonly wetColdThere?: number;
  readonly thirst: Float64Array;
  readonly wait: WaitCosts;
  readonly pass: WaterPass;
}

/** Sums up what a roll-out at one spot says, so that the roll-out itself can be written over. */
export function standingOf(
  context: PlanContext,
  input: { stander: Stander; at: SpotDays; isHome: boolean; rolled: RolledCourse },
): Standing {
  const { at, rolled } = input;
  const pass = waterPass(rolled.course);
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
    wait: waitFor(context, { rolled, pass }),
    pass,
  };
}

/** Rolls a pot out at a spot where it does not stand, and sums it up. */
export function standingAt(
  context: PlanContext,
  { stander, at, isHome }: { stander: Stander; at: SpotDays; isHome: boolean },
): { standing: Standing; rolled: RolledCourse } {
  const rolled = rollCourse(context, { now: stander.now, doings: stayingAt(at), scratch: "tried" });
  return { rolled, standing: standingOf(context, { stander, at, isHome, rolled }) };
}

/** The home of a pot that stands elsewhere, and what its water there would do in the nights of where it stands. */
export function homeStanding(
  context: PlanContext,
  { stander, at, here }: { stander: Stander; at: SpotDays; here: SpotDays },
): Standing {
  const { standing, rolled } = standingAt(context, { stander, at, isHome: true });
  return { ...standing, wetColdThere: totalHarm(wetColdAt(context, rolled.course, here)) };
}

function wetColdAt({ days }: PlanContext, course: Course, at: SpotDays): HarmTally {
  const cold = emptyTally(days.length, course.now.cloud.size);
  wetCold(
    course,
    at.days.map(() => at),
    cold,
  );
  return cold;
}

/**
 * Standing at another spot without rain, from the roll-out at one: under cover a pot dries much alike wherever it is,
 * but each spot has its own nights and light.
 */
export function standingLike(
  context: PlanContext,
  { stander, at, rolled }: { stander: Stander; at: SpotDays; rolled: RolledCourse },
): Standing {
  const { course } = rolled;
  const alike = { course, harm: { ...rolled.harm, "wet-cold": wetColdAt(context, course, at) } };
  return standingOf(context, { stander, at, isHome: false, rolled: alike });
}

/** Harm over the horizon of standing there throughout, the next water given when it costs least. */
export function standingHarm({ bySpot, wet, wait }: Standing): number {
  let sum = wait.byMorning[wait.best]!;
  for (const column of [...Object.values(bySpot), ...Object.values(wet)]) {
    sum += totalHarm({ byDay: column });
  }
  return sum;
}
