import type { Plan } from "../../../core/plan/plan.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { Words } from "../../words/words.ts";
import { OutlookBand } from "../drawing/outlook-band.tsx";
import { outlookCourse, wateringMarks } from "./outlook-points.ts";
import type { PotStand } from "./pot-stand.ts";

/** The coming days of a pot as a band of its water, and when it comes down to its refill point. */
export function PotOutlook({ plan, potPlan, stand, words }: PotOutlookProps) {
  const { outlook } = potPlan;
  return (
    <section>
      <h2>{words.say("pot.outlook")}</h2>
      <p>{outlookText(potPlan, plan, words)}</p>
      <OutlookBand
        {...outlookCourse({ plan, potPlan, words })}
        refillFrac={outlook.refillFrac}
        wetAboveFrac={outlook.wetAboveFrac ?? null}
        marks={wateringMarks(potPlan, words)}
        capacityMl={outlook.capacityMl}
        label={words.say("outlook.label", { pot: stand.pot.name })}
        words={words}
      />
      <p class="hint">{words.say("outlook.legend")}</p>
      <p>
        <a class="button quiet" href={`/pots/${encodeURIComponent(stand.pot.id)}/what-if`}>
          {words.say("what-if.door")}
        </a>
      </p>
    </section>
  );
}

interface PotOutlookProps {
  readonly plan: Plan;
  readonly potPlan: PotPlan;
  readonly stand: PotStand;
  readonly words: Words;
}

const DAY_MS = 86_400_000;

function outlookText({ outlook }: PotPlan, { horizon }: Plan, { say }: Words): string {
  const { daysToRefill, dryUntil } = outlook;
  if (!daysToRefill) return say("outlook.no-refill");
  if (daysToRefill.mid <= 0) return say(dryUntil ? "outlook.refill-now-dry" : "outlook.refill-now");
  const [fromDays, likelyDays] = [Math.floor(daysToRefill.low), Math.floor(daysToRefill.mid)];
  const toDays = Math.ceil(daysToRefill.high);
  // What does not come about within the hours reckoned has the plan's last as its figure.
  const reckonedDays = (Date.parse(horizon.to) - Date.parse(horizon.from)) / DAY_MS;
  if (daysToRefill.high >= Math.floor(10 * reckonedDays) / 10)
    return say("outlook.refill-or-not", { likelyDays });
  if (fromDays < likelyDays) return say("outlook.refill-between", { likelyDays, fromDays, toDays });
  return toDays > likelyDays + 1
    ? say("outlook.refill-latest", { likelyDays, toDays })
    : say("outlook.refill", { likelyDays });
}
