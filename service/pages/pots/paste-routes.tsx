import { Hono } from "hono";
import type { Words } from "../../words/words.ts";
import { typedForm } from "../forms/form-body.ts";
import { problemText, type Typed } from "../forms/form-problems.ts";
import { idOfForm } from "../forms/id-of-form.ts";
import { pageText } from "../frame.tsx";
import type { PageContext } from "../page-context.ts";
import { SiteFrame } from "../site-frame.tsx";
import { type SiteNow, siteNow } from "../site-now.ts";
import { keepPastedPots } from "./keep-pasted-pots.ts";
import { pasteChoices } from "./paste-choices.ts";
import { PASTE_COLUMNS, type PasteRead, pastedPots } from "./paste-rows.ts";

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
    const at = { formId: idOfForm(typed), nowUtcMs: context.now(), collection, words: context.words };
    const read = pastedPots(typed.table ?? "", at);
    if (!read.ok) return c.html(pastePage(context, now, { typed, read }), 422);
    await keepPastedPots(context, { siteId: now.site.id, pots: read.pots });
    return c.redirect(now.collection.pots.length === 0 ? "/" : "/pots", 303);
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
  return pageText(
    <SiteFrame context={context} now={now} title={say("paste.title")} here="/pots">
      <h1>{say("paste.title")}</h1>
      <p class="lead">{say("paste.lead")}</p>
      <pre class="wide" tabindex={0}>{`${PASTE_COLUMNS.join(";")}\n${exampleRow(now, words)}`}</pre>
      <p class="hint">{say("paste.hint")}</p>
      <details class="log" open={read !== null}>
        <summary>{say("paste.choices")}</summary>
        <ul class="facts">
          {pasteChoices(now.collection, words).map(({ column, choices }) => (
            <li>
              {say(`field.${column}`)} ({column}): {choices.map(({ text }) => text).join("; ")}
            </li>
          ))}
        </ul>
      </details>
      {read && !read.ok && <Faults read={read} words={words} />}
      <form method="post" action="/pots/paste">
        <input type="hidden" name="formId" value={idOfForm(typed)} />
        <div class="field">
          <label for="table">{say("field.table")}</label>
          <textarea id="table" name="table" rows={12} spellcheck={false} wrap="off">
            {typed.table ?? ""}
          </textarea>
        </div>
        <button type="submit">{say("paste.keep")}</button>
      </form>
    </SiteFrame>,
  );
}

function exampleRow({ collection }: SiteNow, { say }: Words): string {
  const [mix, spot] = [collection.mixes[0]?.name ?? "", collection.spots[0]?.name ?? ""];
  return [say("paste.example-name"), "citrus", 2, 45, 70, "round", 30, 22, 28, "unglazed", mix, spot].join(
    ";",
  );
}

/** Every fault of every row, with what to do. */
function Faults({ read, words }: { read: Extract<PasteRead, { ok: false }>; words: Words }) {
  const field = (path: readonly (string | number)[]) =>
    words.trySay(`field.${String(path[0])}`) ?? String(path[0]);
  return (
    <div class="problems" role="alert">
      <ul>
        {read.problems.map((problem) => (
          <li>{problemText(problem, words)}</li>
        ))}
        {read.rows.flatMap(({ rowNumber, problems }) =>
          problems.map((problem) => (
            <li>
              {words.say("paste.fault", {
                rowNumber,
                field: field(problem.path),
                fault: problemText(problem, words),
              })}
            </li>
          )),
        )}
      </ul>
    </div>
  );
}
