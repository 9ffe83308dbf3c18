import type { Collection } from "../../../core/plan/collection.ts";
import { groupedBy } from "../../brief/grouped-by.ts";
import type { Words } from "../../words/words.ts";
import { type FormView, ProblemList, SelectField } from "../forms/fields.tsx";
import type { KeptNow } from "../kept-now.ts";
import { Receipt } from "../receipt.tsx";
import type { PotStand } from "./pot-stand.ts";
import { Shelf } from "./shelf.tsx";
import { ShelfFilter } from "./shelf-filter.tsx";
import { type ShelfView, shelfAddress, standsInView } from "./shelf-view.ts";

export interface PotsPageProps {
  readonly stands: readonly PotStand[];
  readonly collection: Collection;
  readonly view: ShelfView;
  /** What was kept just now; null when nothing was. */
  readonly kept: KeptNow | null;
  /** Pots that were ticked in a form that could not be kept. */
  readonly tickedIds: ReadonlySet<string>;
  readonly form: FormView;
  readonly newId: () => string;
  readonly words: Words;
}

/** Every bench as a shelf of vessels, all on one scale, the neediest first; entries for several pots at once below. */
export function PotsPage(props: PotsPageProps) {
  const { stands, collection, view, words, form } = props;
  const { say } = words;
  const shown = standsInView(stands, view);
  return (
    <>
      <h1>{say("pots.title")}</h1>
      <p class="lead">
        {shown.length < stands.length
          ? say("pots.lead.shown", { shownCount: potCount(shown), potCount: potCount(stands) })
          : say("pots.lead", { potCount: potCount(stands) })}
      </p>
      <Receipt kept={props.kept} backTo={shelfAddress(view)} newId={props.newId} words={words} />
      <p>
        <a class="button quiet" href="/pots/new">
          {say("pots.new")}
        </a>{" "}
        <a class="button quiet" href="/pots/paste">
          {say("paste.title")}
        </a>
      </p>
      <ShelfFilter view={view} collection={collection} words={words} />
      <p class="hint">{say("pots.scale")}</p>
      <p class="hint together-first">{say("pots.several")}</p>
      <form method="post" action="/pots/log" class="shelves">
        <input type="hidden" name="formId" value={props.newId()} />
        <input type="hidden" name="view" value={shelfAddress(view)} />
        <ProblemList form={form} />
        {shown.length === 0 && <p>{say("pots.none-shown")}</p>}
        {view.order === "bench" ? (
          <Benches {...props} shown={shown} />
        ) : (
          <Shelf {...props} name={say("pots.order.need")} stands={shown} pxPerCm={shelfScale(stands)} />
        )}
        <Together {...props} />
      </form>
    </>
  );
}

function potCount(stands: readonly PotStand[]): number {
  return stands.reduce((sum, { pot }) => sum + (pot.count ?? 1), 0);
}

/** Widest drawing on a shelf: two stand side by side on a phone. */
const WIDEST_PX = 150;

/** Large enough to read, small enough that the widest pot of all still fits; one scale for every shelf. */
function shelfScale(stands: readonly PotStand[]): number {
  const widestCm = Math.max(20, ...stands.map(({ planted }) => 1.5 * (planted?.body.vessel.topCm ?? 0)));
  return Math.min(2.8, WIDEST_PX / widestCm);
}

function Benches(props: PotsPageProps & { shown: readonly PotStand[] }) {
  const bySpot = groupedBy(props.shown, ({ spotId }) => spotId);
  const pxPerCm = shelfScale(props.stands);
  const spots = [...props.collection.spots].sort((a, b) => a.walkOrder - b.walkOrder);
  return spots.map(({ id, name }) => {
    const here = bySpot.get(id);
    return here ? <Shelf {...props} name={name} spotId={id} stands={here} pxPerCm={pxPerCm} /> : null;
  });
}

/** One entry for all the pots that are ticked; stays in sight while any is. */
function Together({ collection, form, words }: PotsPageProps) {
  const { say } = words;
  return (
    <fieldset class="group together" id="potId">
      <legend>{say("pots.together")}</legend>
      <p id="ticked" class="when" role="status" />
      <p class="hint together-hint">{say("pots.together-hint")}</p>
      <div class="together-ways">
        <button type="submit" name="what" value="watered">
          {say("pots.watered")}
        </button>
        <div class="row">
          <SelectField
            form={form}
            name="toSpotId"
            label={say("field.toSpotId")}
            options={collection.spots.map(({ id, name }) => ({ value: id, text: name }))}
          />
          <button type="submit" name="what" value="moved" class="quiet">
            {say("pots.moved")}
          </button>
        </div>
      </div>
    </fieldset>
  );
}
