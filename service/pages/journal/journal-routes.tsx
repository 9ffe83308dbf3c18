import { Hono } from "hono";
import { z } from "zod";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { doubtTexts } from "../../brief/doubt-text.ts";
import { dayInstant } from "../forms/day-instant.ts";
import { type FormView, NumberField, ProblemList, TextField } from "../forms/fields.tsx";
import { filledInUtcMs } from "../forms/filled-in-at.ts";
import { typedForm } from "../forms/form-body.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { idOfEntry } from "../forms/id-of-form.ts";
import { newFormId } from "../forms/new-form-id.ts";
import { maybeNumber, neededNumber } from "../forms/typed-fields.ts";
import { pageText } from "../frame.tsx";
import { keepEntry } from "../keep-entry.ts";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { EntryRow } from "./entry-row.tsx";
import { entryLine } from "./entry-text.ts";
import { isFound } from "./is-found.ts";
import { entryWhen } from "./when-text.ts";

const SHOWN_AT_MOST = 60;

const GaugeForm = z.object({ rainMm: neededNumber({ from: 0, to: 2000 }) });
const ThermometerForm = z.object({
  minC: neededNumber({ from: -60, to: 60 }),
  maxC: maybeNumber({ from: -60, to: 60 }),
});

/** Everything that was logged, newest first, with search, undo, and the instruments of the house. */
export function journalRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/journal", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    return c.html(
      journalPage(context, { now, search: c.req.query("search") ?? "", typed: {}, problems: [] }),
    );
  });
  routes.post("/journal/instrument", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    const read = instrumentOf(typed, { nowUtcMs: context.now(), zone: now.site.zone });
    if (!read.ok)
      return c.html(journalPage(context, { now, search: "", typed, problems: read.problems }), 422);
    await keepEntry(context, { id: idOfEntry(typed), body: read.value });
    return c.redirect("/journal", 303);
  });
  routes.post("/journal/late", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    await keepEntry(context, lateNote(typed, { now, context }));
    return c.redirect("/journal", 303);
  });
  return routes;
}

/** A form that came late and could not be kept as it was: its fields, readable, as a note of the pot it was for. */
function lateNote(typed: Typed, { now, context }: { now: SiteNow; context: PageContext }) {
  const sent = new URLSearchParams(typed.text ?? "");
  const fields = [...sent]
    .filter(([name]) => !FORM_ONLY.has(name))
    .map(([name, value]) => `${name} ${value}`);
  const potId = /\/pots\/([^/]+)\/log$/.exec(typed.address ?? "")?.[1];
  const known = now.collection.pots.some(({ id }) => id === potId);
  return {
    id: idOfEntry(typed),
    ...(known && potId !== undefined ? { potId } : {}),
    atUtcMs: filledInUtcMs(Object.fromEntries(sent), context.now()),
    body: { kind: "note" as const, text: context.words.say("late.note", { fields: fields.join(", ") }) },
  };
}

const FORM_ONLY = new Set(["formId", "entryId", "happenedAtUtcMs"]);

type InstrumentRead = { ok: true; value: EntryBody } | { ok: false; problems: readonly Problem[] };

function instrumentOf(typed: Typed, clock: { nowUtcMs: number; zone: string }): InstrumentRead {
  const since = dayInstant({ field: "sinceDay", day: typed.sinceDay, ...clock });
  const read = typed.kind === "thermometer" ? readForm(ThermometerForm, typed) : readForm(GaugeForm, typed);
  if (!read.ok || !since.ok) {
    return { ok: false, problems: [read, since].flatMap((part) => (part.ok ? [] : part.problems)) };
  }
  const sinceUtcMs = since.value;
  if ("rainMm" in read.value)
    return { ok: true, value: { kind: "rain-gauge", rainMm: read.value.rainMm, sinceUtcMs } };
  const { minC, maxC } = read.value;
  return {
    ok: true,
    value: { kind: "thermometer", minC, ...(maxC === undefined ? {} : { maxC }), sinceUtcMs },
  };
}

interface JournalPage {
  readonly now: SiteNow;
  readonly search: string;
  readonly typed: Typed;
  readonly problems: readonly Problem[];
}

function journalPage(context: PageContext, { now, search, typed, problems }: JournalPage): string {
  const { words } = context;
  const { say } = words;
  const { collection } = now;
  const today = calendarDay(context.now(), now.site.zone);
  const lines = linesOf(now, context, today).filter(({ when, text }) => isFound(`${when} ${text}`, search));
  const doubts = doubtTexts(now.plan?.pots ?? [], words);
  return pageText(
    <SiteFrame context={context} now={now} title={say("nav.journal")} here="/journal">
      <h1>{say("nav.journal")}</h1>
      <form method="get" action="/journal" class="search">
        <TextField
          form={{ typed: { search }, problems: [], words }}
          name="search"
          type="search"
          label={say("field.search")}
          hint={say("hint.search")}
        />
        <button type="submit" class="quiet">
          {say("journal.search")}
        </button>
      </form>
      <Instruments form={{ typed, problems, words }} today={today} />
      <section>
        <h2>{say("journal.entries")}</h2>
        {lines.length === 0 && (
          <p>{say(search === "" ? "journal.empty" : "journal.none-found", { search })}</p>
        )}
        <ul class="plain logged">
          {lines.slice(0, SHOWN_AT_MOST).map(({ entry, when, text }) => (
            <EntryRow
              entry={entry}
              when={when}
              text={text}
              backTo="/journal"
              undoId={newFormId()}
              doubt={doubts.get(entry.id)}
              words={words}
            />
          ))}
        </ul>
        {lines.length > SHOWN_AT_MOST && (
          <p>{say("journal.more", { restCount: lines.length - SHOWN_AT_MOST })}</p>
        )}
        {collection.pots.length === 0 && <p>{say("pots.lead", { potCount: 0 })}</p>}
      </section>
    </SiteFrame>,
  );
}

interface JournalLine {
  readonly entry: JournalEntry;
  readonly when: string;
  readonly text: string;
}

function linesOf(now: SiteNow, { words }: PageContext, today: CalendarDay): JournalLine[] {
  const { collection } = now;
  return [...now.journal].reverse().map((entry) => ({
    entry,
    when: entryWhen(entry, { zone: now.site.zone, today }, words),
    text: entryLine(entry, { collection, words }),
  }));
}

/** Rain gauge and thermometer: what the grower measures goes before what the feed says. */
function Instruments({ form, today }: { form: FormView; today: string }) {
  const { say } = form.words;
  const open = form.problems.length > 0 ? form.typed.kind : undefined;
  const formFor = (kind: string): FormView => ({
    ...form,
    ...(open === kind ? {} : { typed: {}, problems: [] }),
    prefix: `${kind}-`,
  });
  return (
    <section>
      <h2>{say("journal.instruments")}</h2>
      <p class="hint">{say("journal.instruments-hint")}</p>
      {(["rain-gauge", "thermometer"] as const).map((kind) => (
        <details class="log" open={open === kind}>
          <summary>{say(`instrument.${kind}`)}</summary>
          <form method="post" action="/journal/instrument">
            <ProblemList form={formFor(kind)} />
            <input type="hidden" name="formId" value={newFormId()} />
            <input type="hidden" name="kind" value={kind} />
            <div class="row">
              {kind === "rain-gauge" ? (
                <NumberField form={formFor(kind)} name="rainMm" label={say("field.rainMm")} unit="mm" />
              ) : (
                <>
                  <NumberField form={formFor(kind)} name="minC" label={say("field.minC")} unit="°C" />
                  <NumberField form={formFor(kind)} name="maxC" label={say("field.maxC")} unit="°C" />
                </>
              )}
              <TextField
                form={formFor(kind)}
                name="sinceDay"
                type="date"
                max={today}
                label={say("field.sinceDay")}
              />
            </div>
            <button type="submit">{say("log.keep")}</button>
          </form>
        </details>
      ))}
    </section>
  );
}
