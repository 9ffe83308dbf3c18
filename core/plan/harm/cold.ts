import type { GroupValues } from "../../plant/group.ts";

/** Harm where damage begins to show. Chosen by us: some leaves and tips. */
const FIRST_DAMAGE_HARM = 0.04;

/**
 * What each further degree counts beyond the kill. Chosen by us: a plant is lost once, but where all places kill the
 * least cold is still the best guess, and colder nights must not bring a pot out.
 */
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
