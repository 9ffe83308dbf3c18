import { type Context, Hono } from "hono";
import type { EntryBody } from "../../../core/journal/entry.ts";
import type { Problem } from "../../../core/problem.ts";
import { filledInUtcMs } from "../forms/filled-in-at.ts";
import { fieldTexts, typedForm } from "../forms/form-body.ts";
import type { Typed } from "../forms/form-problems.ts";
import { idOfEntry, idOfForm } from "../forms/id-of-form.ts";
import { newFormId } from "../forms/new-form-id.ts";
import { ownPath } from "../forms/own-path.ts";
import { pageText } from "../frame.tsx";
import { keepEntry } from "../keep-entry.ts";
import { entriesKept, keptAddress, keptNow } from "../kept-now.ts";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { potStands } from "./pot-stand.ts";
import { PotsPage, type PotsPageProps } from "./pots-page.tsx";
import { mayBeWatered, type ShelfView, shelfAddress, shelfViewOf } from "./shelf-view.ts";

/** The shelves of all pots, and entries for many of them at once. */
export function shelvesRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/pots", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const kept = keptNow(now, c.req.query("kept") ?? "", context.words);
    return c.html(potsPage(context, now, { view: shelfViewOf(c.req.query()), kept }));
  });
  routes.post("/pots/log", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const [typed, potIds] = [await typedForm(c), await fieldTexts(c, "potId")];
    const view = viewOfForm(typed);
    const read = togetherOf(now, { typed, potIds });
    if (!read.ok)
      return c.html(potsPage(context, now, { view, typed, potIds, problems: read.problems }), 422);
    const [id, atUtcMs] = [idOfEntry(typed), filledInUtcMs(typed, context.now())];
    await keepEntry(
      context,
      ...read.potIds.map((potId) => ({ id: `${id}.${potId}`, potId, atUtcMs, body: read.body })),
    );
    return c.redirect(keptAddress(shelfAddress(view), id), 303);
  });
  routes.post("/pots/take-back", (c) => takeBack(context, c));
  return routes;
}

/** Undoes every entry that one form made. */
async function takeBack(context: PageContext, c: Context): Promise<Response> {
  const now = await siteNow(context);
  const typed = await typedForm(c);
  const entries = now ? entriesKept(now, typed.of ?? "") : [];
  const id = idOfForm(typed);
  if (entries.length > 0)
    await keepEntry(
      context,
      ...entries.map((entry, index) => ({
        id: `undo.${id}.${index}`,
        body: { kind: "undo" as const, ofEntryId: entry.id },
      })),
    );
  return c.redirect(ownPath(typed.backTo ?? "", "/pots"), 303);
}

function viewOfForm({ view = "" }: Typed): ShelfView {
  return shelfViewOf(Object.fromEntries(new URLSearchParams(view.split("?")[1] ?? "")));
}

type Together =
  | { ok: true; potIds: readonly string[]; body: EntryBody }
  | { ok: false; problems: readonly Problem[] };

const RAN_THROUGH: EntryBody = { kind: "watered", given: { kind: "ran-through" } };

/** One entry for a whole bench but its pots that are kept dry, or for the pots that were ticked; the button says which. */
function togetherOf(now: SiteNow, { typed, potIds }: { typed: Typed; potIds: readonly string[] }): Together {
  const stands = potStands(now);
  const { wateredSpotId } = typed;
  if (wateredSpotId !== undefined) {
    const here = mayBeWatered(stands, wateredSpotId).map(({ pot }) => pot.id);
    return here.length === 0
      ? { ok: false, problems: [{ code: "no-pot-there", path: ["potId"] }] }
      : { ok: true, potIds: here, body: RAN_THROUGH };
  }
  const known = potIds.filter((id) => now.collection.pots.some((pot) => pot.id === id));
  const isMove = typed.what === "moved";
  const spot = now.collection.spots.find(({ id }) => id === typed.toSpotId);
  const problems = [
    ...(known.length === 0 ? [{ code: "no-pot-chosen", path: ["potId"] }] : []),
    ...(isMove && !spot ? [{ code: "not-chosen", path: ["toSpotId"] }] : []),
  ];
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    potIds: known,
    body: isMove && spot ? { kind: "moved", toSpotId: spot.id } : RAN_THROUGH,
  };
}

interface Shown {
  readonly view: ShelfView;
  readonly kept?: PotsPageProps["kept"];
  readonly typed?: Typed;
  /** Pots that were ticked. */
  readonly potIds?: readonly string[];
  readonly problems?: readonly Problem[];
}

function potsPage(
  context: PageContext,
  now: SiteNow,
  { view, kept = null, typed = {}, potIds = [], problems = [] }: Shown,
): string {
  const { words } = context;
  return pageText(
    <SiteFrame context={context} now={now} title={words.say("pots.title")} here="/pots">
      <PotsPage
        stands={potStands(now)}
        collection={now.collection}
        view={view}
        kept={kept}
        tickedIds={new Set(potIds)}
        form={{ typed, problems, words }}
        newId={newFormId}
        words={words}
      />
    </SiteFrame>,
  );
}
