import type { GroupValues } from "../../plant/group.ts";

/** Harm where damage begins to show. Chosen by us: some leaves and tips. */
const FIRST_DAMAGE_HARM = 0.04;

/**
 * Harm of one night's lowest leaf temperature: nothing above the group's line of damage, then rising by the square to
 * the whole plant where it is killed.
 */
export function harmOfNight(
  minC: number,
  { damageC, killC }: Pick<GroupValues, "damageC" | "killC">,
): number {
  if (minC >= damageC) return 0;
  const depth = Math.min(1, (damageC - minC) / Math.max(damageC - killC, 0.5));
  return FIRST_DAMAGE_HARM + (1 - FIRST_DAMAGE_HARM) * depth ** 2;
}
