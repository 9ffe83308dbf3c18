import type { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import type { Words } from "../../words/words.ts";
import { unitAfterNumber } from "./unit-after-number.ts";

/** What was typed, field by field. */
export type Typed = Readonly<Record<string, string>>;

/** A form that was read: the value, or every problem beside its field. */
export type FormRead<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads what was typed by a schema whose messages are problem codes. */
export function readForm<S extends z.ZodType>(schema: S, typed: Typed): FormRead<z.output<S>> {
  const read = schema.safeParse(typed);
  return read.success
    ? { ok: true, value: read.data }
    : { ok: false, problems: read.error.issues.map(problemOfIssue) };
}

function problemOfIssue(issue: z.core.$ZodIssue): Problem {
  const path = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
  const data = issue.code === "custom" ? issue.params : undefined;
  return { code: issue.message, path, ...(data ? { data } : {}) };
}

/** The problem of a field in one sentence that says what to do; undefined when it has none. */
export function fieldProblem(problems: readonly Problem[], field: string, words: Words): string | undefined {
  const own = problems.filter((problem) => problem.path[0] === field);
  if (own.length === 0) return undefined;
  return own.map((problem) => problemText(problem, words)).join(" ");
}

/** A problem in one sentence; of a feed's fault, what helps. */
export function problemText(problem: Problem, words: Words): string {
  const data = Object.fromEntries(
    Object.entries(problem.data ?? {}).filter(
      ([, value]) => typeof value === "number" || typeof value === "string",
    ),
  ) as Record<string, number | string>;
  const unit = unitAfterNumber(String(problem.path[0] ?? ""), words);
  return (
    words.trySay(`problem.${problem.code}`, { ...data, unit }) ??
    words.trySay(`next-step.${data.next}`, data) ??
    words.say("problem.other", { code: problem.code })
  );
}
