import type { Collection } from "../../../core/plan/collection.ts";
import { groupedBy } from "../../brief/grouped-by.ts";
import type { Words } from "../../words/words.ts";
import { type FormView, ProblemList, SelectField } from "../forms/fields.tsx";
import { daysToNeed, needText } from "./next-need.ts";
import type { PotStand } from "./pot-stand.ts";
import { SectionOf } from "./section-of.tsx";

export interface PotsPageProps {
  readonly stands: readonly PotStand[];
  readonly collection: Collection;
  readonly form: FormView;
  readonly formId: string;
  readonly words: Words;
}

/** Every bench as a shelf of vessels, all on one scale, the neediest first; entries for several pots at once below. */
export function PotsPage(props: PotsPageProps) {
  const { stands, collection, words, formId, form } = props;
  const { say } = words;
  const bySpot = groupedBy(stands, ({ spotId }) => spotId);
  const pxPerCm = shelfScale(stands);
  const spots = [...collection.spots].sort((a, b) => a.walkOrder - b.walkOrder);
  return (
    <>
      <h1>{say("pots.title")}</h1>
      <p class="lead">
        {say("pots.lead", { potCount: stands.reduce((sum, { pot }) => sum + (pot.count ?? 1), 0) })}
      </p>
      <p class="hint">{say("pots.scale")}</p>
      <p>
        <a class="button quiet" href="/pots/new">
          {say("pots.new")}
        </a>{" "}
        <a class="button quiet" href="/pots/paste">
          {say("paste.title")}
        </a>
      </p>
      <form method="post" action="/pots/log">
        <input type="hidden" name="formId" value={formId} />
        <ProblemList form={form} />
        {spots.map((spot) => {
          const here = bySpot.get(spot.id) ?? [];
          return here.length === 0 ? null : (
            <Shelf name={spot.name} stands={here} pxPerCm={pxPerCm} words={words} />
          );
        })}
        <Together {...props} />
      </form>
    </>
  );
}

/** Widest drawing on a shelf: two stand side by side on a phone. */
const WIDEST_PX = 150;

/** Large enough to read, small enough that the widest pot of all still fits; one scale for every shelf. */
function shelfScale(stands: readonly PotStand[]): number {
  const widestCm = Math.max(20, ...stands.map(({ planted }) => 1.5 * (planted?.body.vessel.topCm ?? 0)));
  return Math.min(2.8, WIDEST_PX / widestCm);
}

interface ShelfProps {
  readonly name: string;
  readonly stands: readonly PotStand[];
  readonly pxPerCm: number;
  readonly words: Words;
}

function Shelf({ name, stands, pxPerCm, words }: ShelfProps) {
  const scale = { pxPerCm, lineMm: 6, mostAboveCm: 30 };
  return (
    <section>
      <h2>{name}</h2>
      <ul class="shelf">
        {[...stands].sort(byNeed).map((stand) => (
          <li>
            <div class="shelf-board">
              <SectionOf stand={stand} scale={scale} words={words} />
            </div>
            <p>
              <a href={`/pots/${encodeURIComponent(stand.pot.id)}`}>
                {words.say("deed.pots", { name: stand.pot.name, potCount: stand.pot.count ?? 1 })}
              </a>
              <span class="shelf-state">{needText(stand.potPlan, words)}</span>
            </p>
            <label class="choice">
              <input type="checkbox" name="potId" value={stand.pot.id} />
              <span>
                {words.say("pots.choose")}
                <span class="unseen"> {stand.pot.name}</span>
              </span>
            </label>
          </li>
        ))}
      </ul>
    </section>
  );
}

function byNeed(a: PotStand, b: PotStand): number {
  const need = ({ potPlan }: PotStand) => (potPlan ? daysToNeed(potPlan) : -1);
  return need(a) - need(b) || (a.pot.name < b.pot.name ? -1 : 1);
}

/** One entry for all the pots that are ticked. */
function Together({ collection, form, words }: PotsPageProps) {
  const { say } = words;
  return (
    <fieldset class="group" id="potId">
      <legend>{say("pots.together")}</legend>
      <p class="hint">{say("pots.together-hint")}</p>
      <p>
        <button type="submit" name="what" value="watered">
          {say("pots.watered")}
        </button>
      </p>
      <SelectField
        form={form}
        name="toSpotId"
        label={say("field.toSpotId")}
        options={collection.spots.map(({ id, name }) => ({ value: id, text: name }))}
      />
      <p>
        <button type="submit" name="what" value="moved" class="quiet">
          {say("pots.moved")}
        </button>
      </p>
    </fieldset>
  );
}
