import type { Doubted, PotPlan } from "../../core/plan/pot-plan.ts";
import type { Words } from "../words/words.ts";

/** What is odd about an observation, what to ask, and what helps, by the id of its entry. */
export function doubtTexts(pots: readonly PotPlan[], words: Words): ReadonlyMap<string, string> {
  const doubted = pots.flatMap((potPlan) => potPlan.doubted ?? []);
  return new Map(doubted.map((doubt) => [doubt.entryId, doubtText(doubt, words)]));
}

function doubtText(doubt: Doubted, { say }: Words): string {
  return [oddText(doubt, say), say(`doubt.ask.${doubt.question}`), say("doubt.then")].join(" ");
}

function oddText({ expected, wetter }: Doubted, say: Words["say"]): string {
  if (!expected) return say(wetter ? "doubt.wetter" : "doubt.drier");
  const { low, high, unit } = expected;
  return unit === "kg"
    ? say("doubt.kg", { lowKg: low, highKg: high })
    : say("doubt.ml", { lowMl: low, highMl: high });
}
