import type { z } from "zod";
import type { Outcome, Problem } from "../../core/problem.ts";
import type { WorkStep } from "../../core/weather/work/work-step.ts";
import { readBy } from "../case/problems-from-zod.ts";
import { readLines } from "./input.ts";
import { print } from "./output.ts";
import { parseJson } from "./parse-json.ts";

/** One quantity that `calc` reckons: what a line must hold and what comes of it. */
export interface Calculation {
  readonly about: string;
  reckon(line: unknown, withSteps: boolean): Outcome<object>;
}

/**
 * Answers what has come before waiting for more: a partner may write one line and wait. A long input comes in large
 * pieces, so its answers leave in large pieces too.
 * @returns how many lines had faults
 */
export async function calcLines(calculation: Calculation, withSteps: boolean): Promise<number> {
  let faulty = 0;
  let lineNumber = 0;
  for await (const lines of readLines()) {
    let batch = "";
    for (const text of lines) {
      lineNumber++;
      if (text.trim() === "") continue;
      const answer = answerTo({ text, lineNumber }, (line) => calculation.reckon(line, withSteps));
      if (!answer.ok) faulty++;
      batch += `${JSON.stringify(answer.line)}\n`;
    }
    if (batch) await print(batch);
  }
  return faulty;
}

/**
 * Joins a schema and the work on what it reads. Rules refuse a line; questions go beside its figures, for what is
 * possible but odd.
 */
export function calculation<S extends z.ZodType, R extends object>(parts: {
  about: string;
  schema: S;
  rules?: (read: z.output<S>) => Problem[];
  work: (read: z.output<S>) => Outcome<R & { readonly steps: readonly WorkStep[] }>;
  questions?: (read: z.output<S>, steps: readonly WorkStep[]) => Problem[];
}): Calculation {
  return {
    about: parts.about,
    reckon(line, withSteps) {
      const read = readBy(parts.schema, line);
      if (!read.ok) return read;
      const problems = parts.rules?.(read.value) ?? [];
      if (problems.length > 0) return { ok: false, problems };
      const came = parts.work(read.value);
      if (!came.ok) return came;
      const { steps, ...results } = came.value;
      const questions = parts.questions?.(read.value, steps) ?? [];
      return finite({
        ...results,
        ...(questions.length > 0 ? { questions } : {}),
        ...(withSteps ? { steps } : {}),
      });
    },
  };
}

function answerTo(
  { text, lineNumber }: { text: string; lineNumber: number },
  reckon: (line: unknown) => Outcome<object>,
): { ok: boolean; line: object } {
  const parsed = parseJson(text, lineNumber);
  if (!parsed.ok) return { ok: false, line: { error: parsed.problems } };
  const { id, ...line } = asObject(parsed.value);
  const came = reckon(isObject(parsed.value) ? line : parsed.value);
  const back = id === undefined ? {} : { id };
  return came.ok
    ? { ok: true, line: { ...back, ...came.value } }
    : { ok: false, line: { ...back, error: came.problems } };
}

/** JSON has no word for a number that is not finite and would print null. */
function finite(answer: object): Outcome<object> {
  const problems = Object.entries(answer)
    .filter(([, value]) => typeof value === "number" && !Number.isFinite(value))
    .map(([name, value]) => ({ code: "not-finite", path: [name], data: { value: String(value) } }));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: answer };
}

function isObject(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function asObject(value: unknown): Record<string, unknown> {
  return isObject(value) ? value : {};
}
