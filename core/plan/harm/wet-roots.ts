import { type Course, forcingSpans, type HarmTally } from "./course.ts";
import { workColumns } from "./work-columns.ts";

/** Below / above these the hours count more: cold roots heal slowly, warm mix favours the rot. [BLAKER1981, PNW] */
export const COLD_ROOTS_C = 12;
const WARM_MIX_C = 25;
/** Hours with air that make up for one without. Chosen by us because roots take a day or two to recover. */
export const RECOVERY_PER_HOUR = 1;
/** Harm for each further stretch of the hours that the group stands. Chosen by us. */
const HARM_PER_STRETCH = 0.12;

/**
 * Harm of standing wet. Hours without air at the base add up, more quickly in cold or warm mix, and are made good by
 * hours with air; nothing is lost while they stay within what the group stands.
 */
export function wetRoots(course: Course, into: HarmTally): void {
  const { trajectory, now, dayOfHour } = course;
  const { size, wetBase, hourCount } = trajectory;
  const { weightFrac } = now.cloud;
  const standsHours = now.values.wetBaseHours;
  const rest = 1 + now.rest.restingShareFrac;
  const firstWet = wetBase.indexOf(1);
  if (firstWet < 0) return;
  const firstHour = Math.floor(firstWet / size);
  const wetHours = workColumns(size)[0]!.fill(0);
  for (const { forcing, fromHour, toHour } of forcingSpans(course.stretches, hourCount)) {
    for (let hour = Math.max(fromHour, firstHour); hour < toHour; hour++) {
      const at = hour * size;
      const day = dayOfHour[hour]!;
      for (let i = 0; i < size; i++) {
        if (wetBase[at + i] === 0) {
          if (wetHours[i]! > 0) wetHours[i] = Math.max(0, wetHours[i]! - RECOVERY_PER_HOUR);
          continue;
        }
        const before = wetHours[i]!;
        const after = before + rest * paceAt(forcing.tempC[at + i]!);
        wetHours[i] = after;
        if (after <= standsHours) continue;
        const harm = harmOfWetHours(after / standsHours) - harmOfWetHours(before / standsHours);
        into.byParticle[i]! += harm;
        into.byDay[day]! += weightFrac[i]! * harm;
      }
    }
  }
}

/** Weight of an hour without air at an air temperature: 1 between the two limits, up to 2 beyond them. */
export function paceAt(tempC: number): number {
  if (tempC < COLD_ROOTS_C) return Math.min(2, 1 + (COLD_ROOTS_C - tempC) / 8);
  return tempC > WARM_MIX_C ? Math.min(2, 1 + (tempC - WARM_MIX_C) / 10) : 1;
}

/** Harm after wet hours told in the hours that the group stands: 0 up to 1, then towards 1. */
export function harmOfWetHours(standsShare: number): number {
  return standsShare <= 1 ? 0 : 1 - (1 - HARM_PER_STRETCH) ** (standsShare - 1);
}
