import { basename } from "node:path";
import { type Context, Hono } from "hono";
import { backUp } from "../../store/backup.ts";
import { COPY_TYPE, copyStream, keptCopies } from "../../store/kept-copies.ts";
import { potsCsv } from "../../store/pots-csv.ts";
import { exportAll } from "../../store/transfer.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { siteNow } from "../site-now.ts";
import { CopiesPage } from "./copies-page.tsx";

/** Copies of everything: made now, looked at, and taken elsewhere. */
export function copiesRoutes(context: PageContext): Hono {
  const { store, now: clock, copies } = context;
  const routes = new Hono();
  routes.get("/house/copies", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const kept = keptCopies(copies.dir);
    const title = context.words.say("copies.title");
    return c.html(
      pageText(
        <SiteFrame context={context} now={now} title={title} here="/house">
          <CopiesPage
            kept={kept}
            made={c.req.query("made") ?? ""}
            canMake={copies.dir !== null}
            words={context.words}
          />
        </SiteFrame>,
      ),
    );
  });
  routes.post("/house/copies", async (c) => {
    if (copies.dir === null) return c.redirect("/house/copies", 303);
    const { file } = await backUp(store, { dir: copies.dir, nowUtcMs: clock(), keepCount: copies.keepCount });
    // Its own address, so that no page that was ready before is shown.
    return c.redirect(`/house/copies?made=${basename(file)}`, 303);
  });
  routes.get("/house/copies/export.json", async (c) =>
    attached(c, {
      name: "leebench.json",
      type: "application/json",
      body: JSON.stringify(await exportAll(store, clock())),
    }),
  );
  routes.get("/house/copies/pots.csv", async (c) => {
    const [site] = await store.sites.list();
    const body = potsCsv(site ? await store.pots.list(site.id) : []);
    return attached(c, { name: "pots.csv", type: "text/csv; charset=utf-8", body });
  });
  routes.get("/house/copies/:name", (c) => {
    const name = c.req.param("name");
    const body = copyStream(copies.dir, name);
    return body ? attached(c, { name, type: COPY_TYPE, body }) : c.notFound();
  });
  return routes;
}

/** A file to keep, not to show; it holds the exact place, so nothing in between keeps it. */
function attached(
  c: Context,
  { name, type, body }: { name: string; type: string; body: string | ReadableStream },
): Response {
  return c.body(body as string, 200, {
    "Content-Type": type,
    "Content-Disposition": `attachment; filename="${name}"`,
    "Cache-Control": "no-store",
  });
}
