import { Hono } from "hono";
import type { Plan } from "../../../core/plan/plan.ts";
import { briefOf } from "../../brief/brief.ts";
import { comingWater, waterLines } from "../../brief/coming-water.ts";
import { groupedDeeds } from "../../brief/grouped-deeds.ts";
import { namingFor } from "../../brief/naming.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { PlainMessage } from "../plain-message.tsx";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";

/** A sheet for whoever looks after the pots while the grower is away. */
export function holidayRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/holiday", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const { words } = context;
    const title = words.say("holiday.title");
    return c.html(
      pageText(
        <SiteFrame context={context} now={now} title={title} here="/holiday">
          {now.plan ? (
            <Sheet now={now} plan={now.plan} context={context} />
          ) : (
            <PlainMessage title={title} text={words.say("today.none.text")} />
          )}
        </SiteFrame>,
      ),
    );
  });
  return routes;
}

function Sheet({ now, plan, context: { words } }: { now: SiteNow; plan: Plan; context: PageContext }) {
  const { say } = words;
  const { collection } = now;
  const brief = briefOf({ plan, collection, words });
  const waters = comingWater(plan);
  const naming = namingFor({ plan, collection, words });
  const today = groupedDeeds(
    brief.stops.flatMap(({ deeds }) => deeds),
    naming,
  );
  const deedsByDay = new Map([
    [plan.forDay, today],
    ...brief.coming.lines.map(({ day, deeds }) => [day, deeds] as const),
  ]);
  const last = plan.days.at(-1)?.day;
  return (
    <>
      <h1>{say("holiday.title")}</h1>
      <p class="lead">{say("holiday.lead")}</p>
      {plan.days.map(({ day }) => (
        <section class="holiday-day">
          <h2>{words.day(day)}</h2>
          <ul class="plain boxes">
            {(deedsByDay.get(day) ?? []).map((deed) => (
              <li>{deed}</li>
            ))}
            {waterLines(waters.get(day) ?? [], naming).map((line) => (
              <li>{line}</li>
            ))}
          </ul>
          {(waters.get(day) ?? []).length === 0 && (deedsByDay.get(day) ?? []).length === 0 && (
            <p>{say("holiday.nothing")}</p>
          )}
        </section>
      ))}
      {brief.keepDry.lines.length > 0 && (
        <section>
          <h2>{brief.keepDry.heading}</h2>
          <ul>
            {brief.keepDry.lines.map(({ pot, until }) => (
              <li>{until === null ? pot : `${pot}, ${until}`}</li>
            ))}
          </ul>
        </section>
      )}
      {last && <p>{say("holiday.beyond", { lastDay: last })}</p>}
      <p class="deed-note">{say("holiday.care")}</p>
    </>
  );
}
