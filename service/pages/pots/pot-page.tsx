import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import type { Deed } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { deedLine } from "../../brief/deed-line.ts";
import { doubtTexts } from "../../brief/doubt-text.ts";
import { namingFor } from "../../brief/naming.ts";
import { signLines } from "../../brief/sign-lines.ts";
import type { Words } from "../../words/words.ts";
import type { FormView } from "../forms/fields.tsx";
import { EntryRow } from "../journal/entry-row.tsx";
import { entryWhat } from "../journal/entry-text.ts";
import { entryWhen } from "../journal/when-text.ts";
import type { KeptNow } from "../kept-now.ts";
import { PhotoForm } from "../photos/photo-form.tsx";
import { Receipt } from "../receipt.tsx";
import { Signs } from "../today/signs.tsx";
import { FoldedForm } from "./folded-form.tsx";
import { OPEN_KINDS, type OpenKind } from "./log-body.ts";
import { LogForm } from "./log-form.tsx";
import { PotCare } from "./pot-care.tsx";
import { PotOutlook } from "./pot-outlook.tsx";
import type { PotStand } from "./pot-stand.ts";
import { PotWaits } from "./pot-waits.tsx";
import { pageScale, SectionOf } from "./section-of.tsx";

export interface PotPageProps {
  readonly stand: PotStand;
  readonly collection: Collection;
  readonly plan: Plan | null;
  /** This pot's entries, newest first. */
  readonly entries: readonly JournalEntry[];
  /** What was kept just now; null when nothing was. */
  readonly kept: KeptNow | null;
  readonly form: FormView;
  /** The kind of entry that was sent and could not be kept; its form stands open. */
  readonly openKind: OpenKind | null;
  readonly words: Words;
  readonly today: CalendarDay;
  readonly newId: () => string;
}

/** One pot: its section, what it asks for, its coming days, its journal. */
export function PotPage(props: PotPageProps) {
  const { stand, words, collection } = props;
  const { pot, potPlan } = stand;
  const spot = collection.spots.find(({ id }) => id === stand.spotId)?.name ?? stand.spotId;
  return (
    <>
      <h1>{words.say("deed.pots", { name: pot.name, potCount: pot.count ?? 1 })}</h1>
      <p class="lead">
        {words.say("pot.line", { group: words.trySay(`group.${pot.groupId}`) ?? pot.groupId, spot })}
      </p>
      <Receipt
        kept={props.kept}
        backTo={`/pots/${encodeURIComponent(pot.id)}`}
        newId={props.newId}
        words={words}
      />
      <p>
        <a class="button quiet" href="#log">
          {words.say("pot.log")}
        </a>
      </p>
      <div class="two pot-columns">
        <div>
          <figure class="page-section">
            <SectionOf stand={stand} scale={pageScale(stand)} withMarks words={words} />
            <figcaption>{words.say("pot.section-legend")}</figcaption>
          </figure>
        </div>
        <div class="pot-told">
          {potPlan && props.plan ? (
            <Asks {...props} plan={props.plan} potPlan={potPlan} />
          ) : (
            <p>{words.say(stand.planted ? "pot.no-plan" : "pot.not-planted")}</p>
          )}
          {potPlan && props.plan && <PotSigns {...props} plan={props.plan} potPlan={potPlan} />}
          {potPlan && <PotWaits potPlan={potPlan} words={words} />}
          <Facts stand={stand} words={words} />
          <p>
            <a class="button quiet" href={`/pots/${encodeURIComponent(pot.id)}/change`}>
              {words.say("pot.change")}
            </a>
          </p>
          {potPlan && props.plan && (
            <PotOutlook plan={props.plan} potPlan={potPlan} stand={stand} words={words} />
          )}
          <PotCare stand={stand} collection={collection} words={words} />
        </div>
        <Log {...props} />
      </div>
      <Entries {...props} />
    </>
  );
}

/** The pot's own deeds, in the sentences of the brief. */
function Asks({ plan, potPlan, collection, words }: PotPageProps & { plan: Plan; potPlan: PotPlan }) {
  const naming = namingFor({ plan, collection, words });
  const deeds = [potPlan as Deed, ...potPlan.then].map((deed) => deedLine({ potPlan, deed, naming }));
  return (
    <section class="first">
      <h2>{words.say("pot.asks")}</h2>
      <ul class="plain">
        {deeds.map((deed) => (
          <li>
            <p class="deed-head">
              <span class="verb">{deed.verb}</span>
              {[deed.amount, deed.place, deed.hour]
                .filter((part) => part !== null)
                .map((part) => `, ${part}`)}
            </p>
            <p class="deed-reason">
              {deed.reason} <span class="sure">{words.say("deed.sure", { word: deed.confidence })}</span>
            </p>
            {deed.notes.map((note) => (
              <p class="deed-note">{note}</p>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was noted of late and what it may mean. */
function PotSigns({ plan, potPlan, collection, words }: PotPageProps & { plan: Plan; potPlan: PotPlan }) {
  const lines = signLines(potPlan, namingFor({ plan, collection, words }));
  return <Signs section={{ heading: words.say("brief.signs.heading"), lines }} />;
}

/** Holds, weighs, dry until: what is known of the pot in figures. */
function Facts({ stand, words }: { stand: PotStand; words: Words }) {
  const { potPlan, inVessel, mix } = stand;
  const hold = inVessel?.hold;
  const rows = [
    potPlan && words.say("fact.now", { waterMl: potPlan.outlook.nowFrac.mid * potPlan.outlook.capacityMl }),
    potPlan && words.say("fact.capacity", { capacityMl: potPlan.outlook.capacityMl }),
    hold && words.say("fact.air", { airSpaceFrac: hold.airSpaceFrac, wetLayerCm: hold.wetLayerCm }),
    potPlan &&
      words.say("fact.coldest", { lowC: potPlan.outlook.coldestC.low, highC: potPlan.outlook.coldestC.high }),
    potPlan?.outlook.dryUntil && words.say("fact.dry-until", { untilDay: potPlan.outlook.dryUntil }),
    mix && words.say("fact.mix", { mix: mix.name }),
  ].filter((row): row is string => typeof row === "string");
  return (
    <section>
      <h2>{words.say("pot.figures")}</h2>
      <ul class="facts">
        {rows.map((row) => (
          <li>{row}</li>
        ))}
      </ul>
    </section>
  );
}

/** A form for each kind of entry, folded. */
function Log({ stand, collection, form, openKind, words, today, newId }: PotPageProps) {
  const address = `/pots/${encodeURIComponent(stand.pot.id)}`;
  const blank: FormView = { typed: {}, problems: [], words };
  const formOf = (kind: OpenKind): FormView => ({
    ...(kind === openKind ? form : blank),
    prefix: `${kind}-`,
  });
  return (
    <section id="log">
      <h2>{words.say("pot.log")}</h2>
      {OPEN_KINDS.map((kind) => (
        <FoldedForm
          title={words.say(`log.${kind}`)}
          address={`${address}?log=${kind}#log`}
          open={kind === openKind}
          today={today}
        >
          {kind === "photo" ? (
            <PhotoForm form={formOf(kind)} action={`${address}/photo`} formId={newId()} />
          ) : (
            <LogForm
              kind={kind}
              form={formOf(kind)}
              collection={collection}
              action={`${address}/log`}
              formId={newId()}
              today={kind === openKind ? today : undefined}
            />
          )}
        </FoldedForm>
      ))}
    </section>
  );
}

function Entries({ entries, collection, words, newId, stand, today }: PotPageProps) {
  const doubts = doubtTexts(stand.potPlan ? [stand.potPlan] : [], words);
  return (
    <section>
      <h2>{words.say("pot.journal")}</h2>
      {entries.length === 0 && <p>{words.say("journal.empty")}</p>}
      <ul class="plain logged">
        {entries.map((entry) => (
          <EntryRow
            entry={entry}
            when={entryWhen(entry, { zone: collection.site.zone, today }, words)}
            text={entryWhat(entry, { collection, words })}
            backTo={`/pots/${encodeURIComponent(stand.pot.id)}`}
            undoId={newId()}
            doubt={doubts.get(entry.id)}
            words={words}
          />
        ))}
      </ul>
    </section>
  );
}
