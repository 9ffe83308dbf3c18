import { createHash, timingSafeEqual } from "node:crypto";
import { Hono } from "hono";
import { calendarFeed } from "../../notify/calendar-text.ts";
import type { StoredChannelOf } from "../../store/person.ts";
import { wordsFor } from "../../words/words.ts";
import type { PageContext } from "../page-context.ts";
import { siteNow } from "../site-now.ts";

/** A person's calendar at its secret address: the secret is the permission, and opens nothing but this. */
export function calendarRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/calendar/:file", async (c) => {
    const channel = await channelOf(context, c.req.param("file").replace(/\.ics$/, ""));
    const person = channel && (await context.store.people.get(channel.personId));
    const now = await siteNow(context);
    if (!person || !now?.plan) return c.text("Nothing is kept under this address.\n", 404);
    const words = wordsFor(person.locale, person.units);
    const { plan, collection } = now;
    const text = calendarFeed({ plan, collection, words, houseId: context.store.houseId });
    c.header("Cache-Control", "private, no-cache");
    return c.body(text, 200, { "Content-Type": "text/calendar; charset=utf-8" });
  });
  return routes;
}

async function channelOf(
  { store }: PageContext,
  secret: string,
): Promise<StoredChannelOf<"calendar"> | undefined> {
  const calendars = (await store.channels.list()).filter((one) => one.kind === "calendar");
  return calendars.find((one) => timingSafeEqual(digest(one.secret), digest(secret)));
}

/** Digests have one length whatever the text, so that the comparison tells nothing by its time. */
function digest(text: string): Buffer {
  return createHash("sha256").update(text).digest();
}
