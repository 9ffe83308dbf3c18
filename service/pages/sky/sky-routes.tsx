import { Hono } from "hono";
import type { Plan } from "../../../core/plan/plan.ts";
import type { Settings } from "../../../core/plan/settings.ts";
import type { Weather } from "../../../core/weather/weather.ts";
import { briefOf } from "../../brief/brief.ts";
import { namingFor } from "../../brief/naming.ts";
import { comingSky } from "../../brief/sky-lines.ts";
import { DayStrip } from "../drawing/day-strip.tsx";
import { DaysBand } from "../drawing/days-band.tsx";
import { nextHours } from "../drawing/next-hours.ts";
import { pageText } from "../frame.tsx";
import { NoBrief } from "../no-brief.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { fortnight } from "./fortnight.ts";
import { SpotDays } from "./spot-days.tsx";
import { thunderHours } from "./thunder-hours.ts";

/** The coming days at the site and at each spot. */
export function skyRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/sky", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const weather = await context.store.weather.latest(now.site.id);
    const settings = await context.store.settings.get(now.site.id);
    const page = now.plan
      ? skyPage(context, { now, plan: now.plan, weather, settings })
      : nothingKnown(context, now);
    return c.html(page);
  });
  return routes;
}

function nothingKnown(context: PageContext, now: SiteNow): string {
  const { say } = context.words;
  return pageText(
    <SiteFrame context={context} now={now} title={say("sky.title")} here="/sky">
      <NoBrief title={say("sky.title")} words={context.words} />
    </SiteFrame>,
  );
}

const STRIP_HOURS = 48;

interface SkyInput {
  readonly now: SiteNow;
  readonly plan: Plan;
  readonly weather: Weather | null;
  readonly settings: Settings;
}

function skyPage(context: PageContext, { now, plan, weather, settings }: SkyInput): string {
  const { words } = context;
  const { say } = words;
  const { zone } = now.site;
  const brief = briefOf({ plan, collection: now.collection, words });
  const hours = weather
    ? nextHours({ weather, site: now.site, nowUtcMs: context.now(), hourCount: STRIP_HOURS })
    : [];
  const days = weather
    ? fortnight({ plan, weather, site: now.site, journal: now.journal, nowUtcMs: context.now(), settings })
    : plan.days;
  const naming = namingFor({ plan, collection: now.collection, words });
  return pageText(
    <SiteFrame context={context} now={now} title={say("sky.title")} here="/sky">
      <h1>{say("sky.title")}</h1>
      {brief.sky.map((line) => (
        <p class="lead">{line}</p>
      ))}
      <section>
        <h2>{say("sky.hours")}</h2>
        <div class="two">
          <DayStrip
            hours={hours.slice(0, 24)}
            thunderUtcMs={thunderHours(plan)}
            deeds={[]}
            zone={zone}
            label={say("sky.strip-first")}
            words={words}
          />
          <DayStrip
            hours={hours.slice(24)}
            thunderUtcMs={thunderHours(plan)}
            deeds={[]}
            zone={zone}
            label={say("sky.strip-second")}
            words={words}
          />
        </div>
      </section>
      <section>
        <h2>{say("sky.days")}</h2>
        <div class="two">
          <div>
            <DaysBand days={days} words={words} />
            <p class="hint">{say("days.legend")}</p>
          </div>
          <ul class="spells">
            {brief.spells.map((line) => (
              <li>{line}</li>
            ))}
          </ul>
        </div>
        <dl class="days">
          {days.slice(1).map((day) => (
            <div>
              <dt>{words.day(day.day)}</dt>
              <dd>{comingSky(day, naming)}</dd>
            </div>
          ))}
        </dl>
      </section>
      <SpotDays plan={plan} collection={now.collection} words={words} />
      <section>
        <h2>{brief.windows.heading}</h2>
        <ul>
          {brief.windows.lines.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>{brief.trust.heading}</h2>
        <ul>
          {[...brief.trust.lines, brief.trust.credit].map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      </section>
    </SiteFrame>,
  );
}
