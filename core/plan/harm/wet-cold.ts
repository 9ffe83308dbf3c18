import type { SpotDays } from "../days/spot-days.ts";
import type { Course, HarmTally } from "./course.ts";
import { workColumns } from "./work-columns.ts";

/** Contents, as shares of capacity, at which cold begins to matter and at which it matters fully. Chosen by us. */
export const DAMP_FRAC = 0.3;
export const WET_FRAC = 0.7;
/**
 * Fully wet nights at the group's limit by which two thirds are lost. Chosen by us so that one or two such nights
 * cost little and a week costs most: growers report rot after several days of wet roots in cool nights.
 */
const FATAL_NIGHTS = 12;
const SQUARE_FACTOR = 1.1;

/**
 * Harm of wet roots in the cold, for plants that are kept dry in it. Each night counts by how wet the pot is and by
 * how far the mean of three nights lies below where water is cut; nights add up faster than one by one.
 */
export function wetCold(course: Course, spots: readonly SpotDays[], into: HarmTally): void {
  const { now, trajectory, days } = course;
  const stopC = now.values.stopWaterNightC;
  if (stopC === null) return;
  const { size, waterMl } = trajectory;
  const { weightFrac, capacityFactor } = now.cloud;
  const capacityMl = now.inVessel.hold.capacityMl;
  const nights = workColumns(size)[0]!.fill(0);
  for (const [d, day] of days.entries()) {
    const { threeNightC } = spots[d]!;
    const at = (day.toHour - 1) * size;
    for (let i = 0; i < size; i++) {
      const cold = weightOfColdness(threeNightC[d * size + i]!, { stopC, cutC: now.values.cutWaterNightC });
      if (cold === 0) continue;
      const frac = waterMl[at + i]! / (capacityMl * capacityFactor[i]!);
      const wet = Math.min(1, Math.max(0, (frac - DAMP_FRAC) / (WET_FRAC - DAMP_FRAC)));
      const before = nights[i]!;
      nights[i] = before + cold * wet;
      const harm = weightOfColdNights(nights[i]!) - weightOfColdNights(before);
      into.byParticle[i]! += harm;
      into.byDay[d]! += weightFrac[i]! * harm;
    }
  }
}

/** Degrees below the limit at which a night counts as two. Chosen by us. */
const TWICE_BELOW_C = 5;

/** How much a night counts: 0 where water is not yet cut, 1 at the limit for stopping, up to 2 five degrees below. */
export function coldness(threeNightC: number, { stopC, cutC }: { stopC: number; cutC: number }): number {
  if (threeNightC >= Math.max(cutC, stopC)) return 0;
  if (threeNightC <= stopC) return Math.min(2, 1 + (stopC - threeNightC) / TWICE_BELOW_C);
  return (cutC - threeNightC) / (cutC - stopC);
}

/** Harm after that many fully wet nights at the limit: with the square, towards 1. */
export function harmOfColdNights(nights: number): number {
  return 1 - Math.exp(-((nights / FATAL_NIGHTS) ** 2) * SQUARE_FACTOR);
}

/** Nights at which the curve of harm bends over: the exponent is one half there. */
const BEND_NIGHTS = FATAL_NIGHTS * Math.sqrt(0.5 / SQUARE_FACTOR);
const BEND_HARM = harmOfColdNights(BEND_NIGHTS);
const BEND_SLOPE = ((2 * SQUARE_FACTOR * BEND_NIGHTS) / FATAL_NIGHTS ** 2) * Math.exp(-0.5);

/*
 * A plan weighs cold by curves that never flatten. A plant is lost once, but by curves that flatten a degree under cover
 * would be worth the less the colder the nights, and a cold spell would bring pots out.
 */

/** Coldness without an end. */
export function weightOfColdness(threeNightC: number, limits: { stopC: number; cutC: number }): number {
  const belowC = limits.stopC - threeNightC;
  return belowC > 0 ? 1 + belowC / TWICE_BELOW_C : coldness(threeNightC, limits);
}

/** Harm of cold nights that goes on, from its bend, as steep as it is there. */
export function weightOfColdNights(nights: number): number {
  if (nights <= BEND_NIGHTS) return harmOfColdNights(nights);
  return BEND_HARM + BEND_SLOPE * (nights - BEND_NIGHTS);
}
