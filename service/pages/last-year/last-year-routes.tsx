import { Hono } from "hono";
import type { Problem } from "../../../core/problem.ts";
import { askOf, lastYearAt, placesFor } from "../../replay/last-year.ts";
import { OWN_SITE } from "../../replay/own-year.ts";
import type { DeskState } from "../../replay/replay-desk.ts";
import { SelectField } from "../forms/fields.tsx";
import { typedForm } from "../forms/form-body.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { placeName } from "./place-name.ts";
import { ReportPart } from "./report-part.tsx";

const ADDRESS = "/house/last-year";
const REFRESH_S = "5";

/** "How would last year have gone?": the grower's own pots through a whole year, under the plan and under other ways. */
export function lastYearRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get(ADDRESS, async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const state = await stateOf(context);
    // How far a replay is does not stand in the store.
    c.header("Cache-Control", "no-store");
    if (state.kind === "running") c.header("Refresh", REFRESH_S);
    return c.html(lastYearPage(context, { now, state, problems: [] }));
  });
  routes.post(ADDRESS, async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const { place } = await typedForm(c);
    const placeId = placesFor(context).find((id) => id === place);
    if (placeId === undefined) {
      const problems = [{ code: "not-chosen", path: ["place"] }];
      return c.html(lastYearPage(context, { now, state: await stateOf(context), problems }), 422);
    }
    context.replays?.start(askOf(placeId, { site: now.site, nowUtcMs: context.now() }));
    return c.redirect(ADDRESS, 303);
  });
  return routes;
}

async function stateOf({ replays }: PageContext): Promise<DeskState> {
  return (await replays?.state()) ?? { kind: "none" };
}

interface LastYear {
  readonly now: SiteNow;
  readonly state: DeskState;
  readonly problems: readonly Problem[];
}

function lastYearPage(context: PageContext, { now, state, problems }: LastYear): string {
  const { words } = context;
  const title = words.say("last-year.title");
  return pageText(
    <SiteFrame context={context} now={now} title={title} here="/house">
      <h1>{title}</h1>
      <p class="lead">{words.say("last-year.lead")}</p>
      <StatePart context={context} state={state} />
      {state.kind !== "running" && <AskForm context={context} now={now} problems={problems} />}
    </SiteFrame>,
  );
}

function StatePart({ context: { words }, state }: { context: PageContext; state: DeskState }) {
  const { say } = words;
  switch (state.kind) {
    case "none":
      return null;
    case "running":
      return (
        <p role="status">
          {say("last-year.running", { place: placeName(words, state.ask.placeId) })}{" "}
          <progress value={state.doneFrac} max={1} aria-label={say("last-year.progress")} />
        </p>
      );
    case "failed":
      return (
        <p class="amiss" role="alert">
          {say("last-year.failed")}{" "}
          {state.codes
            .map((code) => words.trySay(`last-year.fault.${code}`) ?? words.trySay(`fault.${code}`) ?? "")
            .join(" ")}
        </p>
      );
    case "done":
      return <ReportPart words={words} ask={state.ask} report={state.report} />;
  }
}

function AskForm({ context, now, problems }: { context: PageContext } & Omit<LastYear, "state">) {
  const { words } = context;
  const options = placesFor(context).map((id) => ({
    value: id,
    text:
      id === OWN_SITE
        ? words.say("last-year.own", { yearText: String(lastYearAt(now.site, context.now())) })
        : placeName(words, id),
  }));
  const form = { words, typed: {}, problems, prefix: "last-year" };
  return (
    <form method="post" action={ADDRESS}>
      <SelectField form={form} name="place" label={words.say("last-year.where")} options={options} />
      <p>{words.say("last-year.takes")}</p>
      <button type="submit">{words.say("last-year.begin")}</button>
    </form>
  );
}
