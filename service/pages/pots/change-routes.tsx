import { type Context, Hono } from "hono";
import { groupsById } from "../../../core/plant/groups.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Problem } from "../../../core/problem.ts";
import { typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { pageText } from "../frame.tsx";
import { keptAddress } from "../kept-now.ts";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { ChangeFields } from "./change-page.tsx";
import { changedPot, typedOfPot } from "./change-pot.ts";

/** A page where a pot's own figures are changed: what grows in it, how large, and what its kind is not right about. */
export function changeRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/pots/:id/change", async (c) => {
    const found = await foundPot(c, context);
    if (!found) return c.notFound();
    return c.html(await changePage(context, { ...found, typed: typedOfPot(found.pot), problems: [] }));
  });
  routes.post("/pots/:id/change", async (c) => {
    const found = await foundPot(c, context);
    if (!found) return c.notFound();
    const { now, pot } = found;
    const typed = await typedForm(c);
    const read = changedPot(typed, { before: pot, collection: now.collection });
    if (!read.ok) return c.html(await changePage(context, { ...found, typed, problems: read.problems }), 422);
    await context.store.pots.put(now.site.id, read.value);
    await context.replan(now.site.id);
    return c.redirect(keptAddress(`/pots/${encodeURIComponent(pot.id)}`, pot.id), 303);
  });
  return routes;
}

async function foundPot(c: Context, context: PageContext): Promise<{ now: SiteNow; pot: Pot } | null> {
  const now = await siteNow(context);
  const pot = now?.collection.pots.find(({ id }) => id === c.req.param("id"));
  return now && pot ? { now, pot } : null;
}

async function changePage(
  context: PageContext,
  of: { now: SiteNow; pot: Pot; typed: Typed; problems: readonly Problem[] },
): Promise<string> {
  const { words, store } = context;
  const { now, pot, typed, problems } = of;
  const groups = groupsById(now.collection.ownGroups);
  const group = groups.get(pot.groupId) ?? groups.get("other-succulent")!;
  const title = words.say("pot.change-title", { pot: pot.name });
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/pots">
      <h1>{title}</h1>
      <p class="hint">{words.say("pot.change-vessel")}</p>
      <p>
        <a class="button quiet" href={`/pots/${encodeURIComponent(pot.id)}?log=planted#log`}>
          {words.say("pot.change-repotted")}
        </a>
      </p>
      <ChangeFields
        form={{ typed, problems, words }}
        action={`/pots/${encodeURIComponent(pot.id)}/change`}
        group={group}
        ownGroups={now.collection.ownGroups}
        settings={await store.settings.get(now.site.id)}
      />
    </SiteFrame>,
  );
}
