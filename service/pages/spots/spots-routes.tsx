import { Hono } from "hono";
import type { Problem } from "../../../core/problem.ts";
import type { Spot } from "../../../core/site/spot.ts";
import type { Words } from "../../words/words.ts";
import { READY_SPOTS } from "../begin/ready-spots.ts";
import { SpotSketch } from "../drawing/spot-sketch.tsx";
import { typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { nameProblems } from "../forms/name-problems.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { SpotFields, spotOfForm, typedOfSpot } from "./spot-form.tsx";

/** The spots of the site, in walking order, and a form for each. */
export function spotsRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/spots", async (c) => {
    const now = await siteNow(context);
    return now ? c.html(spotsPage(context, now)) : c.redirect("/begin", 303);
  });
  routes.get("/spots/:id", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const spot = spotFor(now, c.req.param("id"));
    return spot
      ? c.html(spotPage(context, { now, spot, typed: typedOfSpot(spot), problems: [] }))
      : c.notFound();
  });
  routes.post("/spots/:id", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const before = spotFor(now, c.req.param("id"));
    if (!before) return c.notFound();
    const typed = await typedForm(c);
    const id = before.id === NEW_ID ? `spot.${idOfForm(typed)}` : before.id;
    const read = spotOfForm(typed, { id, before });
    const problems = read.ok
      ? nameProblems(read.value, now.collection.spots, "spot-name-taken")
      : read.problems;
    if (!read.ok || problems.length > 0)
      return c.html(spotPage(context, { now, spot: before, typed, problems }), 422);
    await context.store.spots.put(now.site.id, read.value);
    await context.replan(now.site.id);
    return c.redirect("/spots", 303);
  });
  return routes;
}

const NEW_ID = "new";

/** The spot of that id; "new" is an open terrace at the end of the walk that is not kept yet. */
function spotFor({ collection }: SiteNow, id: string): Spot | undefined {
  if (id !== NEW_ID) return collection.spots.find((spot) => spot.id === id);
  const last = Math.max(0, ...collection.spots.map(({ walkOrder }) => walkOrder));
  return { ...READY_SPOTS["open-terrace"], id: NEW_ID, name: "", walkOrder: last + 1 };
}

function spotsPage(context: PageContext, now: SiteNow): string {
  const { words } = context;
  const { say } = words;
  const spots = [...now.collection.spots].sort((a, b) => a.walkOrder - b.walkOrder);
  return pageText(
    <SiteFrame context={context} now={now} title={say("spots.title")} here="/spots">
      <h1>{say("spots.title")}</h1>
      <p class="lead">{say("spots.lead")}</p>
      <p class="hint">{say("spots.legend")}</p>
      <ul class="plain spots">
        {spots.map((spot) => (
          <li>
            <SpotSketch spot={spot} label={letsThroughText(spot, words)} />
            <div>
              <p class="deed-head">
                <a href={`/spots/${encodeURIComponent(spot.id)}`}>{spot.name}</a>
              </p>
              <p>{letsThroughText(spot, words)}</p>
              <p>{roomText({ spot, now, words })}</p>
            </div>
          </li>
        ))}
      </ul>
      <p>
        <a class="button quiet" href={`/spots/${NEW_ID}`}>
          {say("spots.new")}
        </a>
      </p>
    </SiteFrame>,
  );
}

/** What a spot lets through, in one sentence. */
function letsThroughText(spot: Spot, { say }: Words): string {
  const shares = { sunFrac: spot.sunFrac, windFrac: spot.windFrac };
  const text =
    spot.kind === "roof-edge"
      ? say("spot.behind-edge", shares)
      : say("spot.through", { ...shares, rainFrac: spot.rainFrac });
  return spot.heatedToC === undefined ? text : `${text} ${say("spot.heated", { heatedToC: spot.heatedToC })}`;
}

function roomText({ spot, now, words }: { spot: Spot; now: SiteNow; words: Words }): string {
  const planned = now.plan?.spots.find(({ spotId }) => spotId === spot.id);
  const potCount = planned?.potCount ?? 0;
  const left = planned?.placesLeft ?? null;
  const held =
    left === null
      ? words.say("spot.holds", { potCount })
      : words.say("spot.holds-of", { potCount, leftCount: left, comingCount: comingTo(spot, now) });
  const load = potCount > 0 ? planned?.loadKg : undefined;
  return load === undefined
    ? held
    : `${held} ${words.say("spot.load", { nowKg: load.now, soakedKg: load.soaked })}`;
}

/** Pots that the plan carries here today or on the days after. */
function comingTo(spot: Spot, { plan }: SiteNow): number {
  const coming = plan?.pots.filter((pot) =>
    [pot, ...pot.then].some(
      ({ action, toSpotId }) => toSpotId === spot.id && (action === "carry-in" || action === "carry-out"),
    ),
  );
  return (coming ?? []).reduce((sum, { count }) => sum + count, 0);
}

function spotPage(
  context: PageContext,
  { now, spot, typed, problems }: { now: SiteNow; spot: Spot; typed: Typed; problems: readonly Problem[] },
): string {
  const { words } = context;
  const title = spot.name === "" ? words.say("spots.new") : spot.name;
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/spots">
      <h1>{title}</h1>
      <SpotFields
        form={{ typed, problems, words }}
        formId={idOfForm(typed)}
        action={`/spots/${encodeURIComponent(spot.id)}`}
      />
    </SiteFrame>,
  );
}
