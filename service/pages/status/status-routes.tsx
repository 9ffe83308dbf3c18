import { Hono } from "hono";
import { houseStatus } from "../../jobs/house-status.ts";
import { houseTroubles } from "../../jobs/house-troubles.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { siteNow } from "../site-now.ts";
import { MessagesPart } from "./messages-part.tsx";
import { type Saying, sayingFor } from "./saying.ts";
import { BackupPart, MorningPart, WeatherPart } from "./status-parts.tsx";

/** How the feed, the plan, the messages and the copies are doing, in words. */
export function statusRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/house/status", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const { site } = now;
    const nowUtcMs = context.now();
    const status = await houseStatus({ ...context, site, nowUtcMs });
    const saying = sayingFor({ words: context.words, zone: site.zone, nowUtcMs });
    const amiss = houseTroubles(status, nowUtcMs);
    const { say } = context.words;
    const channels = (await context.post.ways()).map(({ channel }) => channel);
    const parts = { status, saying, isAmiss: (part: (typeof amiss)[number]) => amiss.includes(part) };
    return c.html(
      pageText(
        <SiteFrame context={context} now={now} title={say("status.title")} here="/house">
          <h1>{say("status.title")}</h1>
          <p class={amiss.length === 0 ? "lead" : "lead amiss"}>{leadText(amiss, saying)}</p>
          <div class="status">
            <WeatherPart {...parts} />
            <MorningPart {...parts} />
            <MessagesPart {...parts} channels={channels} />
            <BackupPart {...parts} />
          </div>
        </SiteFrame>,
      ),
    );
  });
  return routes;
}

function leadText(amiss: ReturnType<typeof houseTroubles>, { words }: Saying): string {
  if (amiss.length === 0) return words.say("status.all-well");
  const parts = words.list(amiss.map((part) => words.say(`status.part.${part}`)));
  return words.say("status.trouble", { parts });
}
