import type { z } from "zod";
import type { Outcome, Problem } from "../../core/problem.ts";
import { readBy } from "../case/problems-from-zod.ts";
import { parseJson, readLines } from "./input.ts";
import { print } from "./output.ts";

/** One quantity that `calc` reckons: what a line must hold and what comes of it. */
export interface Calculation {
  readonly about: string;
  reckon(line: unknown, withSteps: boolean): Outcome<object>;
}

/** Flush after so much text: a line in, a line out would spend its time on system calls. */
const BATCH_CHARS = 65_536;

/** @returns how many lines had faults */
export async function calcLines(calculation: Calculation, withSteps: boolean): Promise<number> {
  let faulty = 0;
  let batch = "";
  for await (const text of readLines()) {
    if (text.trim() === "") continue;
    const answer = answerTo(text, (line) => calculation.reckon(line, withSteps));
    if (!answer.ok) faulty++;
    batch += `${JSON.stringify(answer.line)}\n`;
    if (batch.length < BATCH_CHARS) continue;
    await print(batch);
    batch = "";
  }
  if (batch) await print(batch);
  return faulty;
}

/** Joins a schema and the work on what it reads. */
export function calculation<S extends z.ZodType>(parts: {
  about: string;
  schema: S;
  rules?: (read: z.output<S>) => Problem[];
  work: (read: z.output<S>, withSteps: boolean) => Outcome<object>;
}): Calculation {
  return {
    about: parts.about,
    reckon(line, withSteps) {
      const read = readBy(parts.schema, line);
      if (!read.ok) return read;
      const problems = parts.rules?.(read.value) ?? [];
      return problems.length > 0 ? { ok: false, problems } : finite(parts.work(read.value, withSteps));
    },
  };
}

function answerTo(text: string, reckon: (line: unknown) => Outcome<object>): { ok: boolean; line: object } {
  const parsed = parseJson(text);
  if (!parsed.ok) return { ok: false, line: { error: parsed.problems } };
  const { id, ...line } = asObject(parsed.value);
  const came = reckon(isObject(parsed.value) ? line : parsed.value);
  const back = id === undefined ? {} : { id };
  return came.ok
    ? { ok: true, line: { ...back, ...came.value } }
    : { ok: false, line: { ...back, error: came.problems } };
}

/** JSON has no word for a number that is not finite and would print null. */
function finite(came: Outcome<object>): Outcome<object> {
  if (!came.ok) return came;
  const problems = Object.entries(came.value)
    .filter(([, value]) => typeof value === "number" && !Number.isFinite(value))
    .map(([name, value]) => ({ code: "not-finite", path: [name], data: { value: String(value) } }));
  return problems.length > 0 ? { ok: false, problems } : came;
}

function isObject(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === "object" && !Array.isArray(value);
}

function asObject(value: unknown): Record<string, unknown> {
  return isObject(value) ? value : {};
}
