import type { GroupValues } from "../../plant/group.ts";

/** Harm where damage begins to show. Chosen by us: some leaves and tips. */
const FIRST_DAMAGE_HARM = 0.04;

/** What each further degree counts beyond the kill. Chosen by us: where all places kill, the least cold is the best guess. */
const BEYOND_PER_C = 0.05;

/**
 * Harm of one night's lowest leaf temperature: nothing above the group's line of damage, then rising by the square to
 * the whole plant where it is killed.
 */
export function harmOfNight(
  minC: number,
  { damageC, killC }: Pick<GroupValues, "damageC" | "killC">,
): number {
  if (minC >= damageC) return 0;
  const deadlyC = Math.max(damageC - killC, 0.5);
  const depth = Math.min(1, (damageC - minC) / deadlyC);
  const beyondC = Math.max(0, damageC - minC - deadlyC);
  return FIRST_DAMAGE_HARM + (1 - FIRST_DAMAGE_HARM) * depth ** 2 + BEYOND_PER_C * beyondC;
}

/**
 * The same as a plan weighs it: beyond the kill it goes on as steep as it is there. Were it to flatten, the colder the
 * nights the less would a degree under cover be worth, and a cold spell would bring pots out.
 */
export function weightOfNight(minC: number, limits: Pick<GroupValues, "damageC" | "killC">): number {
  const { damageC, killC } = limits;
  const beyond = (killC - minC) / Math.max(damageC - killC, 0.5);
  if (beyond <= 0) return harmOfNight(minC, limits);
  return 1 + 2 * (1 - FIRST_DAMAGE_HARM) * beyond;
}
