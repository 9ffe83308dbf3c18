import { Hono } from "hono";
import type { Problem } from "../../../core/problem.ts";
import { exampleText } from "../../csv.ts";
import type { Words } from "../../words/words.ts";
import { typedForm } from "../forms/form-body.ts";
import { problemText, type Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { VesselSure } from "../forms/vessel-fields.tsx";
import { pageText } from "../frame.tsx";
import { keptAddress } from "../kept-now.ts";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { keepPastedPots } from "./keep-pasted-pots.ts";
import { type PasteChoices, pasteChoices } from "./paste-choices.ts";
import {
  columnLabel,
  columnOf,
  columnOfField,
  columnTitle,
  FURTHER_COLUMNS,
  NEEDED_COLUMNS,
  type PasteColumn,
} from "./paste-columns.ts";
import { type PasteRead, pastedPots } from "./paste-rows.ts";

/** Many pots at once, pasted from a spreadsheet. */
export function pasteRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/pots/paste", async (c) => {
    const now = await siteNow(context);
    return now ? c.html(pastePage(context, now, { typed: {}, read: null })) : c.redirect("/begin", 303);
  });
  routes.post("/pots/paste", async (c) => {
    const now = await siteNow(context);
    if (!now) return c.redirect("/begin", 303);
    const typed = await typedForm(c);
    const { collection } = now;
    const formId = idOfForm(typed);
    const read = pastedPots(typed.table ?? "", {
      formId,
      nowUtcMs: context.now(),
      collection,
      words: context.words,
      vesselSure: typed.vesselSure === "yes",
    });
    if (!read.ok) return c.html(pastePage(context, now, { typed, read }), 422);
    await keepPastedPots(context, { siteId: now.site.id, pots: read.pots });
    return c.redirect(keptAddress(collection.pots.length === 0 ? "/" : "/pots", `pot.${formId}`), 303);
  });
  return routes;
}

function pastePage(
  context: PageContext,
  now: SiteNow,
  { typed, read }: { typed: Typed; read: PasteRead | null },
): string {
  const { words } = context;
  const { say } = words;
  const choices = pasteChoices(now.collection, words);
  const title = (column: PasteColumn) => columnTitle(column, words);
  const faults = read && !read.ok ? read.rows.flatMap(({ problems }) => problems) : [];
  return pageText(
    <SiteFrame context={context} now={now} title={say("paste.title")} here="/pots">
      <h1>{say("paste.title")}</h1>
      {read && !read.ok && <Faults read={read} choices={choices} words={words} />}
      <p class="lead">{say("paste.lead")}</p>
      <pre class="wide" tabindex={0}>
        {exampleTable(now, words)}
      </pre>
      <p class="hint">{say("paste.further", { columns: FURTHER_COLUMNS.map(title).join("; ") })}</p>
      <p class="hint">{say("paste.hint")}</p>
      <details class="log" open={faults.some(({ code }) => code === "not-chosen")}>
        <summary>{say("paste.choices")}</summary>
        <ul class="facts">
          {choices.map(({ column, choices: known }) => (
            <li>
              {title(column)}: {known.map(({ text }) => text).join("; ")}
            </li>
          ))}
        </ul>
      </details>
      <form method="post" action="/pots/paste">
        <input type="hidden" name="formId" value={idOfForm(typed)} />
        <div class="field">
          <label for="table">{say("field.table")}</label>
          <textarea id="table" name="table" rows={12} spellcheck={false} wrap="off">
            {typed.table ?? ""}
          </textarea>
        </div>
        <VesselSure problems={faults} words={words} />
        <button type="submit">{say("paste.keep")}</button>
      </form>
    </SiteFrame>,
  );
}

/** A heading and a row under it, as they may be pasted. */
function exampleTable({ collection }: SiteNow, words: Words): string {
  const { say } = words;
  const row: Record<(typeof NEEDED_COLUMNS)[number], string> = {
    name: say("paste.example-name"),
    groupId: say("group.citrus"),
    canopyWidthCm: "45",
    plantHeightCm: "70",
    topCm: "30",
    baseCm: "22",
    heightCm: "28",
    material: say("material.unglazed"),
    mix: collection.mixes[0]?.name ?? "",
    spot: collection.spots[0]?.name ?? "",
  };
  const heading = NEEDED_COLUMNS.map((column) => columnTitle(column, words));
  return exampleText([heading, NEEDED_COLUMNS.map((column) => row[column])], ";");
}

interface FaultsProps {
  readonly read: Extract<PasteRead, { ok: false }>;
  readonly choices: readonly PasteChoices[];
  readonly words: Words;
}

/** Every fault of every row, with what to do. */
function Faults({ read, choices, words }: FaultsProps) {
  const { say } = words;
  return (
    <div class="problems" role="alert">
      {read.rows.length > 0 && <p>{say("paste.rows")}</p>}
      <ul>
        {read.problems.map((problem) => (
          <li>{problemText(withTitles(problem, words), words)}</li>
        ))}
        {read.rows.flatMap(({ rowNumber, problems }) =>
          problems.map((problem) => {
            const fault = faultText(problem, choices, words);
            return <li>{say("paste.fault", { rowNumber, field: fieldName(problem, words), fault })}</li>;
          }),
        )}
      </ul>
    </div>
  );
}

/** Longer lists are only shown below. Chosen by us. */
const NAMED_AT_MOST = 8;

/** A fault in a sentence; of a name that is not known, with the few that are. */
function faultText(problem: Problem, choices: readonly PasteChoices[], words: Words): string {
  const given = problem.data?.given;
  const column = columnOfField(String(problem.path[0]));
  const known = choices.find((one) => one.column === column)?.choices.map(({ text }) => text);
  if (problem.code !== "not-chosen" || typeof given !== "string" || !known)
    return problemText(problem, words);
  return known.length > NAMED_AT_MOST
    ? words.say("paste.not-known-of-many", { given })
    : words.say("paste.not-known", { given, known: known.join("; ") });
}

/** The columns that a problem names, as the page calls them. */
function withTitles(problem: Problem, words: Words): Problem {
  const named = problem.data?.columns;
  if (!Array.isArray(named)) return problem;
  const titles = (named as string[]).map((name) => {
    const column = columnOf(name, words);
    return column ? columnTitle(column, words) : name;
  });
  return { ...problem, data: { columns: titles.join("; ") } };
}

function fieldName({ path: [field] }: Problem, words: Words): string {
  const column = columnOfField(String(field));
  return column ? columnLabel(column, words) : (words.trySay(`field.${String(field)}`) ?? String(field));
}
