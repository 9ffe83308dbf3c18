import { type Context, Hono } from "hono";
import type { Mix } from "../../../core/mix/mix.ts";
import type { Problem } from "../../../core/problem.ts";
import { mixOfForm } from "../begin/mix-step.tsx";
import { READY_MIXES, type ReadyMixKey } from "../begin/ready-mixes.ts";
import type { FormView } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { typedOfMix, typedOfParts } from "../forms/mix-fields.tsx";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { BatchSheet, batchOfForm } from "./batch-sheet.tsx";
import { BenchPage } from "./bench-page.tsx";
import { benchState } from "./bench-state.ts";
import { MixesPage } from "./mixes-page.tsx";
import { TestPage, testOfForm } from "./test-page.tsx";

interface OnBench {
  readonly now: SiteNow;
  /** Null for a new mix. */
  readonly mix: Mix | null;
}

/** The mixes of the house, the bench on which they are built, batch sheets and porosity tests. */
export function mixesRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/mixes", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const title = context.words.say("nav.mixes");
    return c.html(sheet(context, { now, title }, <MixesPage now={now} words={context.words} />));
  });
  routes.get("/mixes/:id", async (c) => {
    const found = await onBench(c, context);
    return found
      ? c.html(benchPage(context, found, { typed: firstTyped(c, found.mix), problems: [] }))
      : c.notFound();
  });
  routes.post("/mixes/:id", async (c) => {
    const found = await onBench(c, context);
    if (!found) return c.notFound();
    const typed = await typedForm(c);
    const { mix, problems } = mixOfForm(typed, {
      id: found.mix?.id ?? `mix.${idOfForm(typed)}`,
      known: found.now.collection.mixes,
    });
    if (problems.length > 0) return c.html(benchPage(context, found, { typed, problems }), 422);
    await context.store.mixes.put(found.now.site.id, { ...mix, ...keptTest(found.mix, mix) });
    await context.replan(found.now.site.id);
    return c.redirect(`/mixes/${encodeURIComponent(mix.id)}`, 303);
  });
  routes.get("/mixes/:id/batch", async (c) => {
    const found = await onBench(c, context);
    if (!found?.mix) return c.notFound();
    return c.html(batchPage(context, { now: found.now, mix: found.mix, asked: c.req.query() }));
  });
  routes.get("/mixes/:id/test", async (c) => {
    const found = await onBench(c, context);
    return found?.mix
      ? c.html(testPage(context, found, { typed: { by: "jug" }, problems: [] }))
      : c.notFound();
  });
  routes.post("/mixes/:id/test", async (c) => {
    const found = await onBench(c, context);
    if (!found?.mix) return c.notFound();
    const typed = await typedForm(c);
    const read = testOfForm(typed);
    if (!read.ok) return c.html(testPage(context, found, { typed, problems: read.problems }), 422);
    await context.store.mixes.put(found.now.site.id, { ...found.mix, test: read.value });
    await context.replan(found.now.site.id);
    return c.redirect(`/mixes/${encodeURIComponent(found.mix.id)}`, 303);
  });
  return routes;
}

const NEW_ID = "new";

async function onBench(c: Context, context: PageContext): Promise<OnBench | null> {
  const now = await siteNow(context);
  if (!now) return null;
  const id = c.req.param("id");
  if (id === NEW_ID) return { now, mix: null };
  const mix = now.collection.mixes.find((known) => known.id === id);
  return mix ? { now, mix } : null;
}

/** What is asked in the address; without any part, the kept mix or one of the beginnings. */
function firstTyped(c: Context, mix: Mix | null): Typed {
  const asked = c.req.query();
  if (Object.keys(asked).some((name) => name.startsWith("part."))) return asked;
  if (mix) return { ...asked, ...typedOfMix(mix) };
  const start = asked.start ?? "";
  return start in READY_MIXES ? { ...asked, ...typedOfParts(READY_MIXES[start as ReadyMixKey]) } : asked;
}

/** A test holds for the parts that were tested; with other parts it is dropped. */
function keptTest(before: Mix | null, after: Mix): Pick<Mix, "test"> {
  const same = before !== null && JSON.stringify(before.recipe) === JSON.stringify(after.recipe);
  return same && before.test ? { test: before.test } : {};
}

function sheet(
  context: PageContext,
  { now, title }: { now: SiteNow; title: string },
  children: Parameters<typeof SiteFrame>[0]["children"],
): string {
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/mixes">
      {children}
    </SiteFrame>,
  );
}

interface Given {
  readonly typed: Typed;
  readonly problems: readonly Problem[];
}

function benchPage(context: PageContext, { now, mix }: OnBench, { typed, problems }: Given): string {
  const read = benchState(typed, { now, mix });
  const state = problems.length > 0 ? { ...read, problems } : read;
  const title = mix?.name ?? context.words.say("bench.title");
  return sheet(
    context,
    { now, title },
    <BenchPage context={context} now={now} state={state} mix={mix} formId={idOfForm(typed)} />,
  );
}

const USUAL_BATCH = { count: "1", sparePercent: "10", bagLitres: "" };

function batchPage(
  context: PageContext,
  { now, mix, asked }: { now: SiteNow; mix: Mix; asked: Typed },
): string {
  const { typed: filled } = benchState(asked, { now, mix });
  const typed = { ...USUAL_BATCH, ...filled };
  const read = batchOfForm(typed, { mix, now, nowUtcMs: context.now() });
  const form: FormView = { typed, problems: read.ok ? [] : read.problems, words: context.words };
  const title = context.words.say("batch.title", { mix: mix.name });
  return sheet(
    context,
    { now, title },
    <BatchSheet context={context} now={now} mix={mix} form={form} batch={read.ok ? read.value : null} />,
  );
}

function testPage(context: PageContext, { now, mix }: OnBench, { typed, problems }: Given): string {
  const { words } = context;
  const title = words.say("test.title", { mix: mix!.name });
  return sheet(
    context,
    { now, title },
    <TestPage mix={mix!} form={{ typed, problems, words }} formId={idOfForm(typed)} />,
  );
}
