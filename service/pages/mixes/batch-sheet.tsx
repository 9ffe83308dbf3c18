import { z } from "zod";
import { type Batch, type BatchLine, batch } from "../../../core/mix/batch.ts";
import type { CareNote } from "../../../core/mix/care-notes.ts";
import type { Component } from "../../../core/mix/component.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import { pourAmountMl } from "../../../core/plan/rows/pour-amount.ts";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import { capitalised, type Words } from "../../words/words.ts";
import { componentName, nameAmid } from "../forms/component-name.ts";
import { type FormView, NumberField, ProblemList } from "../forms/fields.tsx";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { maybeNumber, neededNumber } from "../forms/typed-fields.ts";
import { VESSEL_SHAPE, VesselFields, vesselOfForm } from "../forms/vessel-fields.tsx";
import type { PageContext } from "../page-context.ts";
import type { SiteNow } from "../site-now.ts";

const BatchForm = z.object({
  ...VESSEL_SHAPE,
  count: neededNumber({ from: 1, to: 10_000, whole: true }),
  sparePercent: neededNumber({ from: 0, to: 200 }),
  bagLitres: maybeNumber({ from: 0.5, to: 2000 }),
});

type BatchRead = { ok: true; value: Batch } | { ok: false; problems: readonly Problem[] };

/** Litres, bags and kilograms for the pots that were typed, and what to start when. */
export function batchOfForm(
  typed: Typed,
  { mix, now, nowUtcMs }: { mix: Mix; now: SiteNow; nowUtcMs: number },
): BatchRead {
  const read = readForm(BatchForm, typed);
  if (!read.ok) return read;
  const { vessel, problems } = vesselOfForm(read.value);
  if (problems.length > 0) return { ok: false, problems };
  const parts = mix.recipe.kind === "parts" ? mix.recipe.parts : [];
  const { bagLitres } = read.value;
  return batch({
    parts,
    components: componentsById(now.collection.ownComponents),
    pots: [{ count: read.value.count, vessel }],
    spareFrac: read.value.sparePercent / 100,
    ...(bagLitres === undefined
      ? {}
      : { bagLitres: Object.fromEntries(parts.map(({ component }) => [component, bagLitres])) }),
    windows: now.plan?.workWindows ?? [],
    nowUtcMs,
  });
}

interface BatchSheetProps {
  readonly context: PageContext;
  readonly now: SiteNow;
  readonly mix: Mix;
  readonly form: FormView;
  readonly batch: Batch | null;
}

/** One sheet to take to the potting bench: how much of what, and what to do first. Prints with boxes to tick. */
export function BatchSheet({ context, now, mix, form, batch: made }: BatchSheetProps) {
  const { words } = context;
  const { say } = words;
  return (
    <>
      <h1>{say("batch.title", { mix: mix.name })}</h1>
      <form method="get" action={`/mixes/${encodeURIComponent(mix.id)}/batch`} class="not-printed">
        <ProblemList form={form} labels={{ count: say("field.pots") }} />
        <div class="row">
          <NumberField form={form} name="count" label={say("field.pots")} />
          <NumberField form={form} name="sparePercent" label={say("field.sparePercent")} unit="%" />
          <NumberField
            form={form}
            name="bagLitres"
            label={say("field.bagLitres")}
            unit="l"
            hint={say("hint.bagLitres")}
          />
        </div>
        <VesselFields form={form} />
        <button type="submit">{say("batch.reckon")}</button>
      </form>
      {made && (
        <Sheet made={made} zone={now.site.zone} naming={{ words, own: now.collection.ownComponents }} />
      )}
    </>
  );
}

/** As it is measured with jug, bucket or barrow. */
function measuredMl(litres: number): number {
  return pourAmountMl(litres * 1000);
}

/** Two figures, as a range so wide deserves, and a tenth of a kilogram at the least. */
function measuredKg(massKg: number): number {
  return Math.max(0.1, Number(massKg.toPrecision(2)));
}

/** How much of a component; its two ends are one where they read alike. */
function lineText({ litres, dryMassKg }: BatchLine, { say, figure }: Words): string {
  const [lowKg, highKg] = [measuredKg(dryMassKg.low), measuredKg(dryMassKg.high)];
  const looseMl = measuredMl(litres);
  const isOne = figure("massKg", lowKg)?.number === figure("massKg", highKg)?.number;
  return isOne ? say("batch.line-one", { looseMl, highKg }) : say("batch.line", { looseMl, lowKg, highKg });
}

/** By what components are called. */
interface Naming {
  readonly words: Words;
  readonly own: readonly Component[] | undefined;
}

function Sheet({ made, zone, naming }: { made: Batch; zone: string; naming: Naming }) {
  const { say } = naming.words;
  const name = (id: string) => componentName(id, naming);
  return (
    <section>
      <p>
        {say("batch.sum", {
          potLitreMl: measuredMl(made.potLitres),
          mixedMl: measuredMl(made.mixedLitres),
          shrinkFrac: made.shrinkFrac,
        })}
      </p>
      <ul class="plain boxes">
        {made.lines.map((line) => (
          <li>
            <span class="verb">{name(line.component)}</span> {lineText(line, naming.words)}
            {line.bags !== null && ` ${say("batch.bags", { bagCount: line.bags })}`}
          </li>
        ))}
        {made.dressingLitres > 0 && (
          <li>{say("batch.dressing", { stoneMl: measuredMl(made.dressingLitres) })}</li>
        )}
      </ul>
      <p>
        {say("batch.mass", {
          lowKg: measuredKg(made.dryMassKg.low),
          highKg: measuredKg(made.dryMassKg.high),
        })}
      </p>
      <section>
        <h2>{say("batch.care")}</h2>
        <ul class="plain boxes">
          {made.care.map((note) => (
            <li>{careText({ note, made, zone, naming })}</li>
          ))}
        </ul>
      </section>
      <p class="deed-note">{say("pot.lift")}</p>
    </section>
  );
}

/** What to do with which component, and from when where a work window is known. */
function careText({
  note,
  made,
  zone,
  naming,
}: {
  note: CareNote;
  made: Batch;
  zone: string;
  naming: Naming;
}): string {
  const { words } = naming;
  const components = words.list(note.components.map((id) => nameAmid(id, naming)));
  const start = made.starts.find(({ task }) => task.code === note.code);
  const text = capitalised(words.say(`care.${note.code}`, { components }), words.locale);
  if (!start) return text;
  return `${text} ${words.say("care.start", {
    clock: words.clock(start.startUtcMs, zone),
    startDay: calendarDay(start.startUtcMs, zone),
    windowClock: words.clock(start.windowFromUtcMs, zone),
    windowDay: calendarDay(start.windowFromUtcMs, zone),
  })}`;
}
