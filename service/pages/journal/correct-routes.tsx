import { type Context, Hono } from "hono";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import { typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { happenedAt } from "../forms/happened-at.ts";
import { idOfEntry, idOfForm } from "../forms/id-of-form.ts";
import { pageText } from "../frame.tsx";
import { keepEntry } from "../keep-entry.ts";
import type { PageContext } from "../page-context.ts";
import { entryQuestions } from "../pots/entry-questions.ts";
import { bodyOfLog, type LogKind } from "../pots/log-body.ts";
import { LogForm } from "../pots/log-form.tsx";
import { potStands } from "../pots/pot-stand.ts";
import { kindOfBody, typedOfBody, typedOfInstant } from "../pots/typed-of-body.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { entryLine } from "./entry-text.ts";
import { entryWhen } from "./when-text.ts";

interface Found {
  readonly now: SiteNow;
  readonly entry: JournalEntry;
  readonly kind: LogKind;
}

/** An entry is never changed; a correction says how it should have read. */
export function correctRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/journal/:id/correct", async (c) => {
    const found = await foundEntry(c, context);
    if (!found) return c.notFound();
    const { entry, now } = found;
    const typed = { ...typedOfBody(entry.body), ...typedOfInstant(entry.atUtcMs, now.site.zone) };
    return c.html(correctPage(context, found, { typed, problems: [] }));
  });
  routes.post("/journal/:id/correct", async (c) => {
    const found = await foundEntry(c, context);
    if (!found) return c.notFound();
    const typed = await typedForm(c);
    const { zone } = found.now.site;
    const nowUtcMs = context.now();
    const body = bodyOfLog(found.kind, typed);
    const at = correctedAt(typed, { entry: found.entry, nowUtcMs, zone });
    const stand = potStands(found.now).find(({ pot }) => pot.id === found.entry.potId);
    const asked = body.ok ? entryQuestions(body.value, { typed, stand }) : [];
    if (!body.ok || !at.ok || asked.length > 0) {
      const problems = [...[body, at].flatMap((part) => (part.ok ? [] : part.problems)), ...asked];
      return c.html(correctPage(context, found, { typed, problems }), 422);
    }
    const { id: ofEntryId, potId } = found.entry;
    await keepEntry(context, {
      id: idOfEntry(typed),
      body: {
        kind: "correction",
        ofEntryId,
        atUtcMs: at.value,
        ...(potId === undefined ? {} : { potId }),
        body: body.value,
      },
    });
    return c.redirect(potId === undefined ? "/journal" : `/pots/${encodeURIComponent(potId)}`, 303);
  });
  return routes;
}

/** The clock on the form tells minutes; where nobody changed it the entry keeps its own instant, and so its place. */
function correctedAt(typed: Typed, of: { entry: JournalEntry; nowUtcMs: number; zone: string }) {
  const { entry, nowUtcMs, zone } = of;
  const shown = typedOfInstant(entry.atUtcMs, zone);
  if (typed.day === shown.day && typed.time === shown.time)
    return { ok: true as const, value: entry.atUtcMs };
  return happenedAt(typed, { nowUtcMs, zone, today: calendarDay(nowUtcMs, zone) });
}

async function foundEntry(c: Context, context: PageContext): Promise<Found | null> {
  const now = await siteNow(context);
  const entry = now?.journal.find(({ id }) => id === c.req.param("id"));
  const kind = entry ? kindOfBody(entry.body) : null;
  return now && entry && kind ? { now, entry, kind } : null;
}

function correctPage(
  context: PageContext,
  { now, entry, kind }: Found,
  { typed, problems }: { typed: Typed; problems: readonly Problem[] },
): string {
  const { words } = context;
  const title = words.say("correct.title");
  const today = calendarDay(context.now(), now.site.zone);
  const when = entryWhen(entry, { zone: now.site.zone, today }, words);
  const line = entryLine(entry, { collection: now.collection, words });
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/journal">
      <h1>{title}</h1>
      <p class="lead">{words.say("correct.lead", { entry: `${when} ${line}` })}</p>
      <LogForm
        kind={kind}
        form={{ typed, problems, words }}
        collection={now.collection}
        action={`/journal/${encodeURIComponent(entry.id)}/correct`}
        formId={idOfForm(typed)}
        today={today}
      />
    </SiteFrame>,
  );
}
