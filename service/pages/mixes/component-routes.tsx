import { Hono } from "hono";
import type { Component } from "../../../core/mix/component.ts";
import type { Problem } from "../../../core/problem.ts";
import { typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { componentIdOf, componentOfForm, typedOfComponent } from "./component-form.ts";
import { ComponentPage } from "./component-page.tsx";
import { LibraryPage } from "./library-page.tsx";

const NEW_ID = "new";

/** What is on the page: a kept component, or none yet. */
interface OnPage {
  readonly now: SiteNow;
  readonly component: Component | null;
}

/** Components of the grower's own, described and changed. */
export function componentRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/components", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const { words } = context;
    return c.html(
      pageText(
        <SiteFrame context={context} now={now} title={words.say("library.title")} here="/mixes">
          <LibraryPage words={words} />
        </SiteFrame>,
      ),
    );
  });
  routes.get("/components/:id", async (c) => {
    const found = await onPage(context, c.req.param("id"));
    if (!found) return c.notFound();
    const typed = found.component ? typedOfComponent(found.component) : {};
    return c.html(page(context, found, { typed, problems: [] }));
  });
  routes.post("/components/:id", async (c) => {
    const found = await onPage(context, c.req.param("id"));
    if (!found) return c.notFound();
    const typed = await typedForm(c);
    const id = found.component?.id ?? componentIdOf(typed.name ?? "", idOfForm(typed));
    const read = componentOfForm(typed, id);
    const problems = read.ok ? takenProblems(found, read.value) : read.problems;
    if (!read.ok || problems.length > 0) return c.html(page(context, found, { typed, problems }), 422);
    await context.store.ownComponents.put(found.now.site.id, read.value);
    await context.replan(found.now.site.id);
    return c.redirect(`/components/${encodeURIComponent(id)}`, 303);
  });
  return routes;
}

async function onPage(context: PageContext, id: string): Promise<OnPage | null> {
  const now = await siteNow(context);
  if (!now) return null;
  if (id === NEW_ID) return { now, component: null };
  const component = now.collection.ownComponents?.find((known) => known.id === id);
  return component ? { now, component } : null;
}

/** A new one never takes the place of another own one; the same form sent twice is no new one. */
function takenProblems({ now, component }: OnPage, read: Component): Problem[] {
  if (read.id === NEW_ID) return [{ code: "name-taken", path: ["name"] }];
  const known = component === null && now.collection.ownComponents?.find(({ id }) => id === read.id);
  if (!known || sameText(typedOfComponent(known), typedOfComponent(read))) return [];
  return [{ code: "name-taken", path: ["name"] }];
}

function sameText(one: Typed, other: Typed): boolean {
  return new URLSearchParams(one).toString() === new URLSearchParams(other).toString();
}

function page(
  context: PageContext,
  { now, component }: OnPage,
  { typed, problems }: { typed: Typed; problems: readonly Problem[] },
): string {
  const title = component?.name ?? component?.id ?? context.words.say("own.title");
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/mixes">
      <ComponentPage
        component={component}
        form={{ typed, problems, words: context.words }}
        formId={idOfForm(typed)}
      />
    </SiteFrame>,
  );
}
