import { Hono } from "hono";
import type { PageContext } from "../page-context.ts";

/** A photo never changes under its name. */
const FOR_GOOD = "private, max-age=31536000, immutable";

/** The photos that entries show. */
export function photoRoutes({ store }: PageContext): Hono {
  const routes = new Hono();
  routes.get("/photos/:name", async (c) => {
    const [site] = await store.sites.list();
    const bytes = site && (await store.photos.get(site.id, c.req.param("name")));
    if (!bytes) return c.notFound();
    return c.body(Uint8Array.from(bytes), 200, { "Content-Type": "image/webp", "Cache-Control": FOR_GOOD });
  });
  return routes;
}
