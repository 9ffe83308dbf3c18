import type { Plan } from "../../../core/plan/plan.ts";

/** Every hour with thunder in reach, epoch ms of its beginning. */
export function thunderHours(plan: Plan): number[] {
  return plan.days.flatMap((day) => day.thunderHours.map((hour) => Date.parse(hour)));
}
