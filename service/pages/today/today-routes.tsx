import { Hono } from "hono";
import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Action } from "../../../core/plan/deed.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { Weather } from "../../../core/weather/weather.ts";
import { briefOf } from "../../brief/brief.ts";
import type { BriefDeed, BriefTiming } from "../../brief/brief-value.ts";
import { ACTIONS } from "../../case/plan-codes.ts";
import { houseStatus } from "../../jobs/house-status.ts";
import { houseTroubles } from "../../jobs/house-troubles.ts";
import { keptTiming } from "../../jobs/kept-timing.ts";
import { missingStep } from "../begin/missing-step.ts";
import { DayStrip } from "../drawing/day-strip.tsx";
import { nextHours } from "../drawing/next-hours.ts";
import { filledInUtcMs } from "../forms/filled-in-at.ts";
import { fieldTexts, typedForm } from "../forms/form-body.ts";
import { readForm } from "../forms/form-problems.ts";
import { newFormId } from "../forms/new-form-id.ts";
import { ownPath } from "../forms/own-path.ts";
import { formId, maybeNumber } from "../forms/typed-fields.ts";
import { pageText } from "../frame.tsx";
import { entryText } from "../journal/entry-text.ts";
import { keepEntry } from "../keep-entry.ts";
import { type KeptNow, keptNow } from "../kept-now.ts";
import { NoBrief } from "../no-brief.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { thunderHours } from "../sky/thunder-hours.ts";
import { briefNow } from "./brief-now.ts";
import { bodyOfTick, doneSince } from "./done-deeds.ts";
import { stripDeeds } from "./strip-deeds.ts";
import { TodayPage } from "./today-page.tsx";

const TickSchema = z.object({
  entryId: formId(),
  potId: z.string().min(1, "missing"),
  action: z.enum(ACTIONS as [string, ...string[]], "not-chosen"),
  waterMl: maybeNumber({ from: 0, to: 1_000_000 }),
  toSpotId: z.string().optional(),
});

const UndoSchema = z.object({
  entryId: formId(),
  ofEntryId: z.string().min(1, "missing"),
  backTo: z.string().catch("/"),
});

/** The brief at `/`, ticking its deeds and taking them back. */
export function todayRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/", async (c) => {
    const now = await siteNow(context);
    if (!now || missingStep(now.collection)) return c.redirect("/begin", 303);
    if (!now.plan) return c.html(pageText(noBriefPage(context, now)));
    const weather = await context.store.weather.latest(now.site.id);
    const { plan } = now;
    const timing = await keptTiming(context.store, { plan, briefAtHour: context.briefAtHour });
    const trouble = await troubleText(context, now);
    const kept = keptNow(now, c.req.query("kept") ?? "", context.words);
    return c.html(pageText(briefPage(context, { now, plan, weather, timing, trouble, kept })));
  });
  routes.get("/brief.txt", async (c) => {
    const now = await siteNow(context);
    const text = now && (await briefNow(context, now));
    return text ? c.text(text) : c.text(`${context.words.say("today.none.text")}\n`, 404);
  });
  routes.post("/done", async (c) => {
    const ticks = (await fieldTexts(c, "deed")).map((text) =>
      readForm(TickSchema, Object.fromEntries(new URLSearchParams(text))),
    );
    const atUtcMs = filledInUtcMs(await typedForm(c), context.now());
    const entries = ticks.flatMap((read) =>
      read.ok ? [{ ...tickedEntry(read.value, context), atUtcMs }] : [],
    );
    if (entries.length > 0) await keepEntry(context, ...entries);
    return c.redirect("/", 303);
  });
  routes.post("/undo", async (c) => {
    const read = readForm(UndoSchema, await typedForm(c));
    if (!read.ok) return c.redirect("/", 303);
    const { entryId, ofEntryId, backTo } = read.value;
    await keepEntry(context, { id: entryId, body: { kind: "undo", ofEntryId } });
    return c.redirect(ownPath(backTo, "/"), 303);
  });
  routes.post("/replan", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const problems = problemsOf(await context.replan(now.site.id));
    if (problems.length > 0) return c.html(pageText(noBriefPage(context, now, problems)), 503);
    return c.redirect("/", 303);
  });
  return routes;
}

function tickedEntry({ entryId, potId, ...tick }: z.output<typeof TickSchema>, { words }: PageContext) {
  const action = tick.action as Action;
  return { id: entryId, potId, body: bodyOfTick({ ...tick, action }, words.say(`verb.${action}`)) };
}

interface BriefPage {
  readonly now: SiteNow;
  readonly plan: Plan;
  readonly weather: Weather | null;
  readonly timing: BriefTiming;
  readonly trouble: string | null;
  readonly kept: KeptNow | null;
}

/** One line when the feed, the morning, the messages or the copies want a look. */
async function troubleText({ store, now, briefAtHour, words }: PageContext, { site }: SiteNow) {
  const nowUtcMs = now();
  const parts = houseTroubles(await houseStatus({ store, site, nowUtcMs, briefAtHour }), nowUtcMs);
  if (parts.length === 0) return null;
  return words.say("status.trouble", {
    parts: words.list(parts.map((part) => words.say(`status.part.${part}`))),
  });
}

function briefPage(context: PageContext, { now, plan, weather, timing, trouble, kept }: BriefPage) {
  const { words } = context;
  const brief = briefOf({ plan, collection: now.collection, words, timing });
  const today = calendarDay(context.now(), now.site.zone);
  const isDone = doneSince(now.journal, Date.parse(plan.issuedAt));
  const isOpen = (deed: BriefDeed) => !isDone(deed);
  return (
    <SiteFrame context={context} now={now} title={words.say("nav.today")} here="/">
      <TodayPage
        brief={brief}
        words={words}
        newId={newFormId}
        trouble={trouble}
        kept={kept}
        isDone={isDone}
        logged={loggedToday(now, { today, context })}
        staleNote={plan.forDay < today ? words.say("today.stale", { forDay: plan.forDay }) : null}
        strip={weather && strip({ context, now, plan, weather, deeds: brief.timed.filter(isOpen) })}
      />
    </SiteFrame>
  );
}

const STRIP_HOURS = 24;

function strip(input: {
  context: PageContext;
  now: SiteNow;
  plan: Plan;
  weather: Weather;
  deeds: readonly BriefDeed[];
}) {
  const { context, now, plan, weather, deeds } = input;
  const { zone } = now.site;
  return (
    <DayStrip
      hours={nextHours({ weather, site: now.site, nowUtcMs: context.now(), hourCount: STRIP_HOURS })}
      thunderUtcMs={thunderHours(plan)}
      deeds={stripDeeds(deeds, context.words, zone)}
      zone={zone}
      label={context.words.say("strip.label")}
      words={context.words}
    />
  );
}

function loggedToday(now: SiteNow, { today, context }: { today: string; context: PageContext }) {
  return now.journal
    .filter((entry: JournalEntry) =>
      [entry.recordedUtcMs, entry.atUtcMs].every((at) => calendarDay(at, now.site.zone) === today),
    )
    .reverse()
    .map((entry) => ({
      entryId: entry.id,
      text: entryText(entry, { collection: now.collection, words: context.words }),
    }));
}

/** Why no plan could be made; nothing when one was. */
function problemsOf(made: unknown): readonly Problem[] {
  const outcome = made as { ok?: boolean; problems?: readonly Problem[] } | null | undefined;
  return outcome?.ok === false ? (outcome.problems ?? []) : [];
}

function noBriefPage(context: PageContext, now: SiteNow, problems: readonly Problem[] = []) {
  const { words } = context;
  return (
    <SiteFrame context={context} now={now} title={words.say("nav.today")} here="/">
      <NoBrief title={words.say("today.none.title")} words={words} problems={problems} />
    </SiteFrame>
  );
}
