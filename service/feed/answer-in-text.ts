import type { Outcome, Problem } from "../../core/problem.ts";
import { type FeedRole, feedProblem } from "./feed-problem.ts";
import type { GetAnswer } from "./http-get.ts";
import { jsonFromText } from "./json-from-text.ts";
import { ErrorAnswer } from "./open-meteo/answer-schema.ts";

/** Just what we need of a zod schema. */
interface Schema<T> {
  safeParse(
    value: unknown,
  ):
    | { success: true; data: T }
    | { success: false; error: { issues: readonly { code: string; path: readonly PropertyKey[] }[] } };
}

/** Most faults of shape that are told; one is enough to know, a body of garbage has thousands. */
const MOST_ISSUES = 5;

/** The body of an answer in its expected shape, or why it is not; with a note when it had to be mended. */
export function answerInText<T>(
  answer: Pick<GetAnswer, "text" | "host">,
  want: { schema: Schema<T>; feed: FeedRole },
): Outcome<T> & { readonly notes: readonly Problem[] } {
  const where = { feed: want.feed, host: answer.host };
  const json = jsonFromText(answer.text);
  if (json.kind !== "json")
    return refused([feedProblem("feed-not-json", { ...where, looksLike: json.kind })]);
  const told = ErrorAnswer.safeParse(json.value);
  if (told.success) {
    const reason = told.data.reason?.slice(0, 200);
    return refused([feedProblem("feed-rejected", { ...where, ...(reason === undefined ? {} : { reason }) })]);
  }
  const shaped = want.schema.safeParse(json.value);
  if (!shaped.success) {
    const issues = shaped.error.issues.slice(0, MOST_ISSUES);
    return refused(
      issues.map((issue) =>
        feedProblem(
          "feed-bad-shape",
          { ...where, fault: issue.code },
          issue.path.map((key) => (typeof key === "symbol" ? String(key) : key)),
        ),
      ),
    );
  }
  const notes = json.repaired ? [feedProblem("feed-nan-repaired", where)] : [];
  return { ok: true, value: shaped.data, notes };
}

function refused(problems: readonly Problem[]) {
  return { ok: false as const, problems, notes: [] };
}
