import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { Words } from "../words/words.ts";

/** What should wait for one pot, in a sentence each. */
export function holdLines({ holds = [] }: PotPlan, { say }: Words): string[] {
  return holds.map(({ kind, until, because }) => {
    const what = say(`hold.${kind}`);
    const why = say(`hold.because.${because}`);
    return until === null
      ? say("hold.for-now", { what, why })
      : say("hold.until", { what, why, untilDay: until });
  });
}
