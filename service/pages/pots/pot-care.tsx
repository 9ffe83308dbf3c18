import type { Collection } from "../../../core/plan/collection.ts";
import type { AftercareDays, Learned } from "../../../core/plan/pot-plan.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Spread } from "../../../core/weather/spread.ts";
import type { Words } from "../../words/words.ts";
import type { PotStand } from "./pot-stand.ts";

interface CareProps {
  readonly stand: PotStand;
  readonly collection: Collection;
  readonly words: Words;
}

/** What goes with handling a pot: its way after planting, how it is lifted, and what it has taught. */
export function PotCare({ stand, collection, words }: CareProps) {
  const outlook = stand.potPlan?.outlook;
  return (
    <>
      {outlook?.aftercare && <Aftercare care={outlook.aftercare} words={words} />}
      <Handling stand={stand} collection={collection} words={words} />
      {outlook?.learned && <Taught learned={outlook.learned} words={words} />}
    </>
  );
}

const DATES = [
  ["dryUntil", "aftercare.dry"],
  ["shadeUntil", "aftercare.shade"],
  ["noFeedUntil", "aftercare.no-feed"],
] as const;

/** The way of a freshly planted pot, with its dates; a date of a stage that is over is left out. */
function Aftercare({ care, words }: { care: AftercareDays; words: Words }) {
  const ahead = care.stage === "dry" ? DATES : DATES.slice(1);
  return (
    <section>
      <h2>{words.say("aftercare.title")}</h2>
      <p>{words.say(`aftercare.stage.${care.stage}`)}</p>
      <ol class="care-line">
        {ahead.map(([until, key]) => (
          <li>{words.say(key, { untilDay: care[until] })}</li>
        ))}
      </ol>
      <p class="hint">{words.say("standing.common-practice")}</p>
    </section>
  );
}

/** Mass and hands, and what in the plant hurts. */
function Handling({ stand, collection, words: { say } }: CareProps) {
  const lift = stand.potPlan?.outlook.lift;
  const group = groupsById(collection.ownGroups).get(stand.pot.groupId);
  const hasSap = group !== undefined && group.values.sap !== "none";
  if (!lift && !hasSap) return null;
  return (
    <section>
      <h2>{say("pot.handling")}</h2>
      <ul>
        {lift && <li>{say(`lift.${lift.hands}`, { massKg: lift.massKg, limitKg: lift.limitKg })}</li>}
        {hasSap && <li>{say("deed.sap")}</li>}
      </ul>
      {lift && <p class="hint">{say("lift.hint")}</p>}
    </section>
  );
}

/** What weighing and checking have taught of this pot, against its kind and the library. */
function Taught({ learned, words: { say } }: { learned: Learned; words: Words }) {
  return (
    <section>
      <h2>{say("learned.title")}</h2>
      <ul>
        <li>
          {say("learned.thirst", factorsOf(learned.thirst))} {say(`learned.${knownHow(learned.thirst)}`)}
        </li>
        <li>
          {say("learned.capacity", factorsOf(learned.capacity))}{" "}
          {say(`learned.${knownHow(learned.capacity)}`)}
        </li>
      </ul>
      <p class="hint">{say("learned.hint")}</p>
    </section>
  );
}

function factorsOf({ low, mid, high }: Spread): Record<string, number> {
  return { lowFrac: low, midFrac: mid, highFrac: high };
}

/** Width of four fifths of the cloud against its middle; the limits are chosen by us. */
function knownHow({ low, mid, high }: Spread): "well" | "roughly" | "hardly" {
  const width = (high - low) / mid;
  if (width < 0.2) return "well";
  return width < 0.5 ? "roughly" : "hardly";
}
