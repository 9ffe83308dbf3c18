import { z } from "zod";
import { DayText } from "../case/instant.ts";

/** Somebody who looks after the pots between two days, both included. It begins and ends by itself. */
export const HandoverSchema = z.strictObject({
  id: z.string().min(1),
  personId: z.string().min(1),
  fromDay: DayText,
  toDay: DayText,
  /** Nobody else gets the brief meanwhile. */
  alone: z.boolean(),
});
export type Handover = z.output<typeof HandoverSchema>;

/** The hand-overs that hold on a day. */
export function handoversOn(handovers: readonly Handover[], day: string): Handover[] {
  return handovers.filter(({ fromDay, toDay }) => fromDay <= day && day <= toDay);
}
