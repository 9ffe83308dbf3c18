import { randomUUID } from "node:crypto";
import { type Context, Hono } from "hono";
import type { Problem } from "../../../core/problem.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import { lookUpElevation } from "../../feed/look-up-elevation.ts";
import { searchPlaces } from "../../feed/search-places.ts";
import type { Words } from "../../words/words.ts";
import type { FormView } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { typedOfParts } from "../forms/mix-fields.tsx";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { NEW_POT_TYPED, PotFields, potOfForm } from "../pots/pot-form.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { BeginFrame } from "./begin-frame.tsx";
import { type BeginStep, missingStep } from "./missing-step.ts";
import { MixStep, mixOfForm } from "./mix-step.tsx";
import { READY_MIXES, type ReadyMixKey } from "./ready-mixes.ts";
import { SEARCH, SiteForm, SiteStep, siteOf } from "./site-step.tsx";
import { SpotsStep, spotsOfForm } from "./spots-step.tsx";

interface StepInput {
  readonly now: SiteNow | null;
  readonly typed: Typed;
  readonly problems?: readonly Problem[];
}

/** From an empty house to a first brief: site, spots, a mix, a pot. Each step is kept before the next is asked. */
export function beginRoutes(context: PageContext): Hono {
  const routes = new Hono();
  const onwards = (c: Context) => c.redirect("/begin", 303);
  const again = (c: Context, step: BeginStep, input: StepInput) =>
    c.html(pageText(stepPage(context, { ...input, step })), 422);

  routes.get("/begin", async (c) => {
    const now = await siteNow(context);
    const step = missingStep(now?.collection ?? null);
    if (step === null) return c.redirect("/", 303);
    return c.html(pageText(stepPage(context, { step, now, typed: firstTyped(step, c, context.words) })));
  });
  routes.post("/begin/site", async (c) => {
    const typed = await typedForm(c);
    const place = (typed.place ?? "").trim();
    if (typed.do === SEARCH && place !== "")
      return c.html(pageText(await searchedPage(context, { typed, place })));
    const read = readForm(SiteForm, typed);
    if (!read.ok) return again(c, "site", { now: null, typed, problems: read.problems });
    const elevationM = read.value.elevationM ?? (await elevationOf(context, read.value));
    if (elevationM === null) {
      const problems = [{ code: "elevation-unknown", path: ["elevationM"] }];
      return again(c, "site", { now: null, typed, problems });
    }
    const [known] = await context.store.sites.list();
    await context.store.sites.put(siteOf(read.value, known?.id ?? `site.${randomUUID()}`, elevationM));
    return onwards(c);
  });
  routes.post("/begin/spots", async (c) => {
    const [typed, now] = [await typedForm(c), await siteNow(context)];
    if (!now) return onwards(c);
    const { spots, problems } = spotsOfForm(typed, idOfForm(typed));
    if (problems.length > 0) return again(c, "spots", { now, typed, problems });
    for (const spot of spots) await context.store.spots.put(now.site.id, spot);
    return onwards(c);
  });
  routes.post("/begin/mix", async (c) => {
    const [typed, now] = [await typedForm(c), await siteNow(context)];
    if (!now) return onwards(c);
    const { mix, problems } = mixOfForm(typed, {
      id: `mix.${idOfForm(typed)}`,
      known: now.collection.mixes,
    });
    if (problems.length > 0) return again(c, "mix", { now, typed, problems });
    await context.store.mixes.put(now.site.id, mix);
    return onwards(c);
  });
  routes.post("/begin/pot", async (c) => {
    const [typed, now] = [await typedForm(c), await siteNow(context)];
    if (!now) return onwards(c);
    const read = potOfForm(typed, { nowUtcMs: context.now(), collection: now.collection });
    if (!read.ok) return again(c, "pot", { now, typed, problems: read.problems });
    await context.store.pots.put(now.site.id, read.value.pot);
    await context.store.journal.append(now.site.id, read.value.entries);
    await context.replan(now.site.id);
    return c.redirect("/", 303);
  });
  return routes;
}

async function elevationOf(
  { feed }: PageContext,
  at: { latDeg: number; lonDeg: number },
): Promise<number | null> {
  const found = await lookUpElevation({ ...at, feed });
  return found.ok ? found.value : null;
}

async function searchedPage(context: PageContext, { typed, place }: { typed: Typed; place: string }) {
  const { words, feed } = context;
  const found = await searchPlaces({ name: place, feed, language: words.language });
  return (
    <BeginFrame context={context} step="site">
      <SiteStep form={{ typed, problems: [], words }} search={{ name: place, found }} />
    </BeginFrame>
  );
}

/** A ready mix brings its name, to be changed like its parts. */
function firstTyped(step: BeginStep, c: Context, { say }: Words): Typed {
  if (step === "pot") return NEW_POT_TYPED;
  if (step === "spots") return { "take.open-terrace": "yes" };
  const start = c.req.query("start");
  if (step !== "mix" || start === undefined || !(start in READY_MIXES)) return {};
  const key = start as ReadyMixKey;
  return { ...typedOfParts(READY_MIXES[key]), name: say(`ready-mix.${key}`) };
}

function stepPage(
  context: PageContext,
  { step, now, typed, problems = [] }: StepInput & { step: BeginStep },
) {
  const form: FormView = { typed, problems, words: context.words };
  const formId = idOfForm(typed);
  return (
    <BeginFrame context={context} step={step} siteName={now?.site.name}>
      {step === "site" && <SiteStep form={form} search={null} />}
      {step === "spots" && <SpotsStep form={form} formId={formId} />}
      {step === "mix" && <MixStep form={form} formId={formId} action="/begin/mix" />}
      {step === "pot" && now && (
        <>
          <p>
            <a class="button quiet" href="/pots/paste">
              {context.words.say("begin.pot.paste")}
            </a>
          </p>
          <PotFields
            form={form}
            collection={now.collection}
            formId={formId}
            action="/begin/pot"
            today={calendarDay(context.now(), now.site.zone)}
          />
        </>
      )}
    </BeginFrame>
  );
}
