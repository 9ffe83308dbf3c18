import { randomUUID } from "node:crypto";
import { type Context, Hono } from "hono";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { Sheet } from "../../brief/sheet.ts";
import type { FormView } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import { pageText } from "../frame.tsx";
import { NoBrief } from "../no-brief.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { handoverOfForm } from "./handover-form.ts";
import { HandoverPart } from "./handover-part.tsx";
import { handoversAhead, sheetNow } from "./sheet-now.ts";

type Given = Pick<FormView, "typed" | "problems">;
const NOTHING: Given = { typed: {}, problems: [] };

/** A sheet for whoever looks after the pots while the grower is away, and who gets the brief meanwhile. */
export function holidayRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/holiday", async (c) => {
    const now = await siteNow(context);
    return now ? c.html(await holidayPage(context, now, NOTHING)) : c.redirect("/begin", 303);
  });
  routes.post("/holiday/handover", (c) => keepHandover(c, context));
  routes.post("/holiday/handover/:id/end", async (c) => {
    const { choices } = context.store;
    const id = c.req.param("id");
    await choices.putHandovers((await choices.handovers()).filter((one) => one.id !== id));
    return c.redirect("/holiday", 303);
  });
  return routes;
}

async function keepHandover(c: Context, context: PageContext) {
  const now = await siteNow(context);
  if (!now) return c.redirect("/begin", 303);
  const { choices, people } = context.store;
  const typed = await typedForm(c);
  const read = handoverOfForm(typed, {
    id: randomUUID(),
    today: calendarDay(context.now(), now.site.zone),
    personIds: (await people.list()).map(({ id }) => id),
  });
  if (!read.ok) return c.html(await holidayPage(context, now, { typed, problems: read.problems }), 422);
  await choices.putHandovers([...(await choices.handovers()), read.value]);
  return c.redirect("/holiday", 303);
}

async function holidayPage(context: PageContext, now: SiteNow, given: Given): Promise<string> {
  const { words, store, post } = context;
  const title = words.say("holiday.title");
  const handovers = await handoversAhead(context, now.site);
  const reached = new Set((await post.ways()).map(({ personId }) => personId));
  const sheet = sheetNow(now, { handovers, words });
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/holiday">
      {sheet ? <SheetPart sheet={sheet} /> : <NoBrief title={title} words={words} />}
      <HandoverPart
        form={{ ...given, words }}
        handovers={handovers}
        people={await store.people.list()}
        reached={reached}
      />
    </SiteFrame>,
  );
}

function SheetPart({ sheet }: { sheet: Sheet }) {
  const { title, lead, where, days, keepDry, nothing, beyond, care } = sheet;
  return (
    <>
      <h1>{title}</h1>
      <p class="lead">{lead}</p>
      <p class="deed-note">{care}</p>
      <section>
        <h2>{where.heading}</h2>
        <ul>
          {where.lines.map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      </section>
      {days.map(({ name, lines }) => (
        <section class="holiday-day">
          <h2>{name}</h2>
          {lines.length === 0 ? (
            <p>{nothing}</p>
          ) : (
            <ul class="plain boxes">
              {lines.map((line) => (
                <li>{line}</li>
              ))}
            </ul>
          )}
        </section>
      ))}
      {keepDry.lines.length > 0 && (
        <section>
          <h2>{keepDry.heading}</h2>
          <ul>
            {keepDry.lines.map((line) => (
              <li>{line}</li>
            ))}
          </ul>
        </section>
      )}
      {beyond !== null && <p>{beyond}</p>}
    </>
  );
}
