import { randomUUID } from "node:crypto";
import { Hono } from "hono";
import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import { briefOf } from "../../brief/brief.ts";
import { ACTIONS } from "../../case/plan-codes.ts";

import { missingStep } from "../begin/missing-step.ts";
import { typedForm } from "../forms/form-body.ts";
import { readForm } from "../forms/form-problems.ts";
import { formId, maybeNumber } from "../forms/typed-fields.ts";
import { Frame, pageText } from "../frame.tsx";
import { entryText } from "../journal/entry-text.ts";
import { keepEntry } from "../keep-entry.ts";
import type { PageContext } from "../page-context.ts";
import { PlainMessage } from "../plain-message.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { bodyOfTick, isDone } from "./done-deeds.ts";
import { TodayPage } from "./today-page.tsx";

const TickSchema = z.object({
  entryId: formId(),
  potId: z.string().min(1, "missing"),
  action: z.enum(ACTIONS as [string, ...string[]], "not-chosen"),
  waterMl: maybeNumber({ from: 0, to: 1_000_000 }),
  toSpotId: z.string().optional(),
});

const UndoSchema = z.object({ entryId: formId(), ofEntryId: z.string().min(1, "missing") });

/** The brief at `/`, ticking its deeds and taking them back. */
export function todayRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/", async (c) => {
    const now = await siteNow(context);
    if (!now || missingStep(now.collection)) return c.redirect("/begin", 303);
    return c.html(
      pageText(now.plan ? briefPage(context, { now, plan: now.plan }) : noBriefPage(context, now)),
    );
  });
  routes.post("/done", async (c) => {
    const read = readForm(TickSchema, await typedForm(c));
    if (!read.ok) return c.redirect("/", 303);
    const { entryId, potId, ...tick } = read.value;
    const action = tick.action as (typeof ACTIONS)[number];
    const body = bodyOfTick({ ...tick, action }, context.words.say(`verb.${action}`));
    await keepEntry(context, { id: entryId, potId, body });
    return c.redirect("/", 303);
  });
  routes.post("/undo", async (c) => {
    const read = readForm(UndoSchema, await typedForm(c));
    if (read.ok) {
      const { entryId, ofEntryId } = read.value;
      await keepEntry(context, { id: entryId, body: { kind: "undo", ofEntryId } });
    }
    return c.redirect("/", 303);
  });
  routes.post("/replan", async (c) => {
    const [site] = await context.store.sites.list();
    if (site) await context.replan(site.id);
    return c.redirect("/", 303);
  });
  return routes;
}

function briefPage(context: PageContext, { now, plan }: { now: SiteNow; plan: Plan }) {
  const { words, demo } = context;
  const brief = briefOf({ plan, collection: now.collection, words });
  const today = calendarDay(context.now(), now.site.zone);
  const sinceUtcMs = Date.parse(plan.issuedAt);
  return (
    <Frame
      words={words}
      title={words.say("nav.today")}
      here="/"
      siteName={now.site.name}
      demo={demo}
      credit={brief.trust.credit}
    >
      <TodayPage
        brief={brief}
        words={words}
        newId={randomUUID}
        isDone={(deed) => isDone(deed, { journal: now.journal, sinceUtcMs })}
        logged={loggedToday(now, { today, context })}
        staleNote={plan.forDay < today ? words.say("today.stale", { forDay: plan.forDay }) : null}
      />
    </Frame>
  );
}

function loggedToday(now: SiteNow, { today, context }: { today: string; context: PageContext }) {
  return now.journal
    .filter((entry: JournalEntry) => calendarDay(entry.recordedUtcMs, now.site.zone) === today)
    .reverse()
    .map((entry) => ({
      entryId: entry.id,
      text: entryText(entry, { collection: now.collection, words: context.words }),
    }));
}

function noBriefPage({ words, demo }: PageContext, now: SiteNow) {
  return (
    <Frame words={words} title={words.say("nav.today")} here="/" siteName={now.site.name} demo={demo}>
      <PlainMessage title={words.say("today.none.title")} text={words.say("today.none.text")}>
        <form method="post" action="/replan">
          <button type="submit">{words.say("today.replan")}</button>
        </form>
      </PlainMessage>
    </Frame>
  );
}
