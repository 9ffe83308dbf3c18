import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import { holdLines } from "../../brief/hold-lines.ts";
import type { Words } from "../../words/words.ts";

/** What should wait for this pot: feed, sun, repotting, spraying. */
export function PotWaits({ potPlan, words }: { potPlan: PotPlan; words: Words }) {
  const lines = holdLines(potPlan, words);
  if (lines.length === 0) return null;
  return (
    <section>
      <h2>{words.say("holds.heading")}</h2>
      <ul class="facts">
        {lines.map((line) => (
          <li>{line}</li>
        ))}
      </ul>
    </section>
  );
}
