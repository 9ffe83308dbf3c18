import { type Context, Hono } from "hono";
import { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import { filledInUtcMs } from "../forms/filled-in-at.ts";
import { typedForm } from "../forms/form-body.ts";
import { readForm, type Typed } from "../forms/form-problems.ts";
import { maybeNumber } from "../forms/typed-fields.ts";
import { keepEntry } from "../keep-entry.ts";
import type { PageContext } from "../page-context.ts";
import { answerEntries, type ToldDeed } from "./answer-entries.ts";
import { faultPage, LINK_HEADERS } from "./answer-frame.tsx";
import { answerText } from "./answer-page.tsx";
import { type OpenAnswer, openAnswer } from "./open-answer.ts";

const NOTHING = { typed: {}, problems: [] };
const GONE = 410;
const NOT_FOUND = 404;
const WATER_LIMITS = { from: 0, to: 1_000_000 };

/**
 * Answers to a brief by the links that its messages carry. The link is the permission: whoever holds it may say this one
 * thing and see these deeds, signed in or not. Looking changes nothing; only a sent form does.
 */
export function answerRoutes(context: PageContext): Hono {
  const routes = new Hono();
  routes.get("/answer/:token", (c) =>
    withAnswer(c, context, (answer) => c.html(answerText(answer, NOTHING))),
  );
  routes.post("/answer/:token", (c) =>
    withAnswer(c, context, async (answer) => {
      const typed = await typedForm(c);
      const told = answer.claims.purpose === "log" ? toldIn(answer, typed) : undefined;
      if (told?.ok === false) return c.html(answerText(answer, { typed, problems: told.problems }), 422);
      const atUtcMs = filledInUtcMs(typed, context.now());
      const entries = answerEntries(answer, told?.value).map((entry) => ({ ...entry, atUtcMs }));
      if (entries.length > 0) await keepEntry(context, ...entries);
      return c.redirect(c.req.path, 303);
    }),
  );
  return routes;
}

async function withAnswer(
  c: Context,
  context: PageContext,
  go: (answer: OpenAnswer) => Response | Promise<Response>,
): Promise<Response> {
  for (const [name, value] of Object.entries(LINK_HEADERS)) c.header(name, value);
  const answer = await openAnswer(context, c.req.param("token") ?? "");
  if (typeof answer !== "string") return go(answer);
  return c.html(faultPage(context.words, answer), answer === "link-expired" ? GONE : NOT_FOUND);
}

type ToldRead = { ok: true; value: ToldDeed[] } | { ok: false; problems: readonly Problem[] };

/** What the form says of each deed of the list. */
function toldIn(answer: OpenAnswer, typed: Typed): ToldRead {
  const fields = answer.deeds.map((_, index) => [`waterMl.${index}`, maybeNumber(WATER_LIMITS)] as const);
  const read = readForm(z.object(Object.fromEntries(fields)), typed);
  if (!read.ok) return read;
  return {
    ok: true,
    value: answer.deeds.map((_, index) => ({
      isDone: typed[`done.${index}`] === "1",
      waterMl: read.value[`waterMl.${index}`],
    })),
  };
}
