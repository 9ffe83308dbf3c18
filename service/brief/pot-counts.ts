import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { Naming } from "./naming.ts";
import { potsText } from "./pots-text.ts";

/** Every pot of a plan in one of four states; together they are all of them. */
export interface PotCounts {
  readonly allCount: number;
  /** With a deed of today. */
  readonly busyCount: number;
  /** Without one, but to be looked at: for what was noted, or again in the evening. */
  readonly lookCount: number;
  readonly dryCount: number;
  readonly restCount: number;
}

/**
 * Counts the pots of a plan by what is to be done with them today.
 * @param busyIds  pots with a deed of today
 */
export function potCounts({ pots }: Pick<Plan, "pots">, busyIds: ReadonlySet<string>): PotCounts {
  const counts = { busy: 0, look: 0, dry: 0, rest: 0 };
  for (const pot of pots) counts[stateOf(pot, busyIds)] += pot.count;
  const { busy, look, dry, rest } = counts;
  return {
    allCount: busy + look + dry + rest,
    busyCount: busy,
    lookCount: look,
    dryCount: dry,
    restCount: rest,
  };
}

function stateOf(pot: PotPlan, busyIds: ReadonlySet<string>): "busy" | "look" | "dry" | "rest" {
  if (busyIds.has(pot.potId)) return "busy";
  if ((pot.seen ?? []).length > 0 || lastsTillEvening(pot)) return "look";
  return pot.action === "keep-dry" || pot.then.some(({ action }) => action === "keep-dry") ? "dry" : "rest";
}

/** The pots that are to be looked at again in the evening; null where there are none. */
export function eveningLine(naming: Naming): string | null {
  const potIds = naming.plan.pots.filter(lastsTillEvening).map(({ potId }) => potId);
  return potIds.length === 0 ? null : naming.words.say("brief.evening", { pots: potsText(potIds, naming) });
}

/** Whether a pot that needs nothing now runs short within the day, so that its reason asks to look again. */
function lastsTillEvening({ action, reason }: PotPlan): boolean {
  return action === "none" && reason.code === "has-enough" && reason.numbers.leftDays === 0;
}
