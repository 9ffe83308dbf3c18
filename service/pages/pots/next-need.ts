import type { Deed } from "../../../core/plan/deed.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { Words } from "../../words/words.ts";

/** Days until a pot first asks for something; Infinity when the plan sees nothing coming. */
export function daysToNeed({ action, then, outlook }: PotPlan): number {
  if (action !== "none" && action !== "keep-dry") return 0;
  const laterDeed = then.some((deed) => deed.action !== "none" && deed.action !== "keep-dry") ? 1 : Infinity;
  return Math.min(laterDeed, outlook.daysToRefill?.mid ?? Infinity);
}

/** What a pot asks for next, in few words. */
export function needText(potPlan: PotPlan | null, words: Words): string {
  if (!potPlan) return words.say("need.unknown");
  if (potPlan.action !== "none") return words.say(`state.${potPlan.action}`);
  const later = potPlan.then.find((deed: Deed) => deed.action !== "none");
  if (later) return words.say(`state.${later.action}`);
  const days = potPlan.outlook.daysToRefill;
  if (!days) return words.say("need.nothing");
  return words.say("need.water-in", { leftDays: Math.max(0, Math.round(days.mid)) });
}
