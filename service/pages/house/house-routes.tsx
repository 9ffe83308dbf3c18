import { Hono } from "hono";
import type { Settings } from "../../../core/plan/settings.ts";
import type { Problem } from "../../../core/problem.ts";
import { SiteForm, siteOf } from "../begin/site-step.tsx";
import { type FormView, NumberField, ProblemList, TextField } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { AboutPage } from "./about-page.tsx";
import { MorningsPart, morningsProps } from "./mornings-routes.tsx";
import { RulesFields, rulesOfForm, typedOfRules } from "./rules-form.tsx";

interface Asked {
  /** The form that was sent and could not be kept. */
  readonly form: "site" | "rules" | null;
  readonly typed: Typed;
  readonly problems: readonly Problem[];
}

const NOTHING: Asked = { form: null, typed: {}, problems: [] };

/** Place, house rules, and whose work all this rests on. */
export function houseRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/house", async (c) => {
    const now = await siteNow(context);
    return now ? c.html(await housePage(context, now, NOTHING)) : c.redirect("/begin", 303);
  });
  routes.get("/house/about", async (c) => {
    const now = await siteNow(context);
    return now ? c.html(await aboutPage(context, now)) : c.redirect("/begin", 303);
  });
  routes.post("/house/site", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    const read = readForm(SiteForm, typed);
    if (!read.ok)
      return c.html(await housePage(context, now, { form: "site", typed, problems: read.problems }), 422);
    const elevationM = read.value.elevationM ?? now.site.elevationM;
    await context.store.sites.put(siteOf(read.value, now.site.id, elevationM));
    await context.replan(now.site.id);
    return c.redirect("/house", 303);
  });
  routes.post("/house/rules", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    const read = rulesOfForm(typed, await context.store.settings.get(now.site.id));
    if (!read.ok)
      return c.html(await housePage(context, now, { form: "rules", typed, problems: read.problems }), 422);
    await context.store.settings.put(now.site.id, read.value);
    await context.replan(now.site.id);
    return c.redirect("/house", 303);
  });
  return routes;
}

async function aboutPage(context: PageContext, now: SiteNow): Promise<string> {
  const title = context.words.say("house.about");
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/house">
      {await AboutPage({ context })}
    </SiteFrame>,
  );
}

const HOUSE_DOORS = [
  ["/house/status", "status.title"],
  ["/people", "people.title"],
  ["/house/access", "access.title"],
  ["/house/words", "house.words"],
  ["/house/last-year", "last-year.title"],
  ["/house/about", "house.about"],
] as const;

async function housePage(context: PageContext, now: SiteNow, asked: Asked): Promise<string> {
  const { words } = context;
  const { say } = words;
  const settings = await context.store.settings.get(now.site.id);
  return pageText(
    <SiteFrame context={context} now={now} title={say("house.title")} here="/house">
      <h1>{say("house.title")}</h1>
      <ul class="house-doors">
        {HOUSE_DOORS.map(([address, name]) => (
          <li>
            <a href={address}>{say(name)}</a>
          </li>
        ))}
      </ul>
      <section>
        <h2>{say("house.place")}</h2>
        <PlaceFields form={formFor("site", asked, { context, typed: typedOfSite(now) })} />
      </section>
      <section>
        <h2>{say("house.rules")}</h2>
        <RulesFields form={formFor("rules", asked, { context, typed: typedOfRules(settings as Settings) })} />
      </section>
      <MorningsPart {...(await morningsProps(context))} />
      <section>
        <h2>{say("house.backup")}</h2>
        <p>{say("house.backup-text")}</p>
        <p>
          <a href="/house/copies">{say("copies.title")}</a>
        </p>
      </section>
    </SiteFrame>,
  );
}

/** The form as sent where it was this one, else as it is kept. */
function formFor(
  name: NonNullable<Asked["form"]>,
  asked: Asked,
  { context, typed }: { context: PageContext; typed: Typed },
): FormView {
  const isThis = asked.form === name;
  return {
    typed: isThis ? asked.typed : typed,
    problems: isThis ? asked.problems : [],
    words: context.words,
    prefix: `${name}-`,
  };
}

function typedOfSite({ site }: SiteNow): Typed {
  return {
    name: site.name,
    latDeg: String(site.latDeg),
    lonDeg: String(site.lonDeg),
    elevationM: String(site.elevationM),
    zone: site.zone,
  };
}

function PlaceFields({ form }: { form: FormView }) {
  const { say } = form.words;
  return (
    <form method="post" action="/house/site">
      <ProblemList form={form} labels={{ name: say("field.site-name") }} />
      <TextField form={form} name="name" label={say("field.site-name")} />
      <div class="row">
        <NumberField form={form} name="latDeg" label={say("field.latDeg")} unit="°" />
        <NumberField form={form} name="lonDeg" label={say("field.lonDeg")} unit="°" />
        <NumberField form={form} name="elevationM" label={say("field.elevationM")} unit="m" />
      </div>
      <TextField form={form} name="zone" label={say("field.zone")} hint={say("hint.zone")} />
      <button type="submit">{say("house.keep-place")}</button>
    </form>
  );
}
