import { type Context, Hono } from "hono";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { FormView } from "../forms/fields.tsx";
import { fieldFile, typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { happenedAt } from "../forms/happened-at.ts";
import { idOfEntry, idOfForm } from "../forms/id-of-form.ts";
import { newFormId } from "../forms/new-form-id.ts";
import { pageText } from "../frame.tsx";
import { keepEntry } from "../keep-entry.ts";
import { type KeptNow, keptAddress, keptNow } from "../kept-now.ts";
import type { PageContext } from "../page-context.ts";
import { keepPhoto } from "../photos/keep-photo.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { entryQuestions } from "./entry-questions.ts";
import { type BodyRead, bodyOfLog, LOG_KINDS, OPEN_KINDS, type OpenKind } from "./log-body.ts";
import { NEW_POT_TYPED, PotFields, potOfForm } from "./pot-form.tsx";
import { PotPage } from "./pot-page.tsx";
import { type PotStand, potStands } from "./pot-stand.ts";
import { whatIf } from "./what-if.ts";
import { WhatIfPage } from "./what-if-page.tsx";

interface Given {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
}

const NOTHING: Given = { typed: {}, problems: [] };

/** One pot, a new pot, and entries for one. */
export function potsRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/pots/new", async (c) => {
    const now = await siteNow(context);
    return now
      ? c.html(newPotPage(context, now, { typed: NEW_POT_TYPED, problems: [] }))
      : c.redirect("/begin", 303);
  });
  routes.post("/pots/new", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    const read = potOfForm(typed, { nowUtcMs: context.now(), collection: now.collection });
    if (!read.ok) return c.html(newPotPage(context, now, { typed, problems: read.problems }), 422);
    await context.store.pots.put(now.site.id, read.value.pot);
    await context.store.journal.append(now.site.id, read.value.entries);
    await context.replan(now.site.id);
    const { id } = read.value.pot;
    return c.redirect(keptAddress(`/pots/${encodeURIComponent(id)}`, id), 303);
  });
  routes.get("/pots/:id", async (c) => {
    const found = await foundPot(c, context);
    if (!found) return c.notFound();
    const openKind = OPEN_KINDS.find((kind) => kind === c.req.query("log")) ?? null;
    const kept = keptNow(found.now, c.req.query("kept") ?? "", context.words);
    return c.html(potPage(context, { ...found, openKind, given: NOTHING, kept }));
  });
  routes.get("/pots/:id/what-if", async (c) => {
    const found = await foundPot(c, context);
    if (!found) return c.notFound();
    const spotId = c.req.query("spot") ?? "";
    const { now, stand } = found;
    const seen = await whatIf(context, { siteId: now.site.id, potId: stand.pot.id, spotId });
    const title = context.words.say("what-if.title", { pot: stand.pot.name });
    return c.html(
      pageText(
        <SiteFrame context={context} now={now} title={title} here="/pots">
          <WhatIfPage
            stand={stand}
            collection={now.collection}
            whatIf={seen}
            spotId={spotId}
            words={context.words}
          />
        </SiteFrame>,
      ),
    );
  });
  routes.post("/pots/:id/log", async (c) => {
    const found = await foundPot(c, context);
    if (!found) return c.notFound();
    const typed = await typedForm(c);
    const kind = LOG_KINDS.find((known) => known === typed.kind) ?? "note";
    const { zone } = found.now.site;
    const nowUtcMs = context.now();
    const body = knownNames(bodyOfLog(kind, typed), found.now);
    const at = happenedAt(typed, { nowUtcMs, zone, today: calendarDay(nowUtcMs, zone) });
    const asked = body.ok ? entryQuestions(body.value, { typed, stand: found.stand }) : [];
    if (!body.ok || !at.ok || asked.length > 0) {
      const problems = [...[body, at].flatMap((part) => (part.ok ? [] : part.problems)), ...asked];
      return c.html(potPage(context, { ...found, openKind: kind, given: { typed, problems } }), 422);
    }
    const [potId, id] = [found.stand.pot.id, idOfEntry(typed)];
    await keepEntry(context, {
      id,
      potId,
      atUtcMs: at.value,
      body: body.value,
    });
    const page = kind === "gone" ? "/pots" : `/pots/${encodeURIComponent(potId)}`;
    return c.redirect(keptAddress(page, id), 303);
  });
  routes.post("/pots/:id/photo", async (c) => {
    const now = await siteNow(context);
    const pot = now?.collection.pots.find(({ id }) => id === c.req.param("id"));
    if (!now || !pot) return c.notFound();
    const typed = await typedForm(c);
    const sent = { siteId: now.site.id, potId: pot.id, typed, file: await fieldFile(c, "photo") };
    const kept = await keepPhoto(context, sent);
    const stand = potStands(now).find(({ pot: { id } }) => id === pot.id);
    if (!kept.ok && stand)
      return c.html(
        potPage(context, { now, stand, openKind: "photo", given: { typed, problems: kept.problems } }),
        422,
      );
    if (!stand || !kept.ok) return c.redirect("/journal", 303);
    return c.redirect(keptAddress(`/pots/${encodeURIComponent(pot.id)}`, kept.value), 303);
  });
  return routes;
}

/** A move to a spot that is not there, or a planting in an unknown mix, is asked again. */
function knownNames(read: BodyRead, { collection }: SiteNow): BodyRead {
  if (!read.ok) return read;
  const { value } = read;
  const has = (list: readonly { id: string }[], wanted: string) => list.some(({ id }) => id === wanted);
  if (value.kind === "moved" && !has(collection.spots, value.toSpotId)) {
    return { ok: false, problems: [{ code: "not-chosen", path: ["toSpotId"] }] };
  }
  if (value.kind === "planted" && !has(collection.mixes, value.mixId)) {
    return { ok: false, problems: [{ code: "not-chosen", path: ["mixId"] }] };
  }
  return read;
}

async function foundPot(c: Context, context: PageContext): Promise<{ now: SiteNow; stand: PotStand } | null> {
  const now = await siteNow(context);
  const stand = now && potStands(now).find(({ pot }) => pot.id === c.req.param("id"));
  return now && stand ? { now, stand } : null;
}

function newPotPage(context: PageContext, now: SiteNow, { typed, problems }: Given): string {
  const { words } = context;
  const title = words.say("pots.new");
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/pots">
      <h1>{title}</h1>
      <PotFields
        form={{ typed, problems, words }}
        collection={now.collection}
        formId={idOfForm(typed)}
        action="/pots/new"
        today={calendarDay(context.now(), now.site.zone)}
      />
    </SiteFrame>,
  );
}

interface PotPageNow {
  readonly now: SiteNow;
  readonly stand: PotStand;
  readonly openKind: OpenKind | null;
  readonly given: Given;
  readonly kept?: KeptNow | null;
}

function potPage(context: PageContext, { now, stand, openKind, given, kept = null }: PotPageNow): string {
  const { words } = context;
  const form: FormView = { ...given, words };
  return pageText(
    <SiteFrame context={context} now={now} title={stand.pot.name} here="/pots">
      <PotPage
        stand={stand}
        collection={now.collection}
        plan={now.plan}
        entries={now.journal.filter(({ potId }) => potId === stand.pot.id).reverse()}
        kept={kept}
        form={form}
        openKind={openKind}
        words={words}
        today={calendarDay(context.now(), now.site.zone)}
        newId={newFormId}
      />
    </SiteFrame>,
  );
}
