import type { Deed } from "../../core/plan/deed.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { Words } from "../words/words.ts";

/** Minutes to which a morning's work is told. */
const TOLD_TO_MIN = 5;

/** How long today's deeds take, with how much water and how much to carry; nothing where it is no work to speak of. */
export function workLine(today: readonly { potPlan: PotPlan; deed: Deed }[], words: Words): string | null {
  const sum = (of: (deed: Deed) => number | undefined) =>
    today.reduce((all, { potPlan, deed }) => all + (of(deed) ?? 0) * potPlan.count, 0);
  const minutes = sum((deed) => deed.minutes);
  if (minutes === 0) return null;
  const waterMl = sum((deed) => deed.amountMl);
  const carriedKg = sum((deed) => (deed.action.startsWith("carry") ? deed.lift?.massKg : undefined));
  const parts = [
    words.say("brief.work.minutes", { minutes: toldMinutes(minutes) }),
    ...(waterMl > 0 ? [words.say("brief.work.water", { waterMl })] : []),
    ...(carriedKg > 0 ? [words.say("brief.work.carried", { carriedKg })] : []),
  ];
  return words.say("brief.work", { parts: words.list(parts) });
}

/** Rounded up, from the tenths in which deeds tell it, so that a sum of tenths tips over nothing. */
function toldMinutes(minutes: number): number {
  return Math.ceil(Math.round(10 * minutes) / (10 * TOLD_TO_MIN)) * TOLD_TO_MIN;
}
