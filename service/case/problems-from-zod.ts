import type { z } from "zod";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Outcome, Problem } from "../../core/problem.ts";

/** Reads a value by a schema: the parsed value, or every fault of shape as problems. */
export function readBy<S extends z.ZodType>(schema: S, given: unknown): Outcome<z.output<S>> {
  const read = schema.safeParse(given, { reportInput: true, error: knownKeys });
  return read.success ? { ok: true, value: read.data } : { ok: false, problems: problemsFromZod(read.error) };
}

/** Every issue as code, path and data. */
export function problemsFromZod(error: z.ZodError): Problem[] {
  return error.issues.flatMap(problemsFromIssue);
}

type Issue = z.core.$ZodIssue;

/** The schema itself is handed out only while the message is made, so the known keys travel as the message. */
function knownKeys(issue: z.core.$ZodRawIssue): string | undefined {
  if (issue.code !== "unrecognized_keys") return undefined;
  const def = issue.inst?._zod.def as { shape?: object } | undefined;
  return Object.keys(def?.shape ?? {}).join(" ");
}

function problemsFromIssue(issue: Issue): Problem[] {
  const path = issue.path.map((step) => (typeof step === "symbol" ? String(step) : step));
  if (issue.code === "unrecognized_keys") {
    const known = issue.message.split(" ");
    return issue.keys.map((key) => ({
      code: "unknown-key",
      path: [...path, key],
      data: { nearest: nearestNames(key, known), known },
    }));
  }
  const { code, data } = codeAndData(issue);
  return [{ code, path, ...(data && { data }) }];
}

function codeAndData(issue: Issue): Omit<Problem, "path"> {
  switch (issue.code) {
    case "invalid_type":
      return wrongType(issue);
    case "invalid_value":
      return notOneOf(issue.input, issue.values.map(String));
    case "invalid_union":
      return notOfAKind(issue);
    case "too_small":
      return { code: "too-small", data: { ...given(issue), least: issue.minimum, ...edge(issue.inclusive) } };
    case "too_big":
      return { code: "too-large", data: { ...given(issue), most: issue.maximum, ...edge(issue.inclusive) } };
    case "invalid_format":
      return { code: "wrong-form", data: { ...given(issue), form: formOf(issue) } };
    case "custom":
      return {
        code: String(issue.params?.code ?? "not-valid"),
        data: { ...given(issue), ...issue.params?.data },
      };
    default:
      return { code: "not-valid", data: { ...given(issue), detail: issue.message } };
  }
}

function wrongType(issue: Extract<Issue, { code: "invalid_type" }>): Omit<Problem, "path"> {
  if (issue.input === undefined) return { code: "missing", data: { expected: issue.expected } };
  return { code: "wrong-type", data: { ...given(issue), expected: issue.expected } };
}

function notOfAKind(issue: Extract<Issue, { code: "invalid_union" }>): Omit<Problem, "path"> {
  const { discriminator, options } = issue as { discriminator?: string; options?: readonly unknown[] };
  const whole = issue.input as Record<string, unknown> | null | undefined;
  if (!discriminator || !options) return { code: "no-form-fits", data: given(issue) };
  return notOneOf(whole?.[discriminator], options.map(String));
}

function notOneOf(input: unknown, known: readonly string[]): Omit<Problem, "path"> {
  if (input === undefined) return { code: "missing", data: { known } };
  const nearest = typeof input === "string" ? nearestNames(input, known) : [];
  return { code: "not-one-of", data: { given: shown(input), nearest, known } };
}

const edge = (inclusive: boolean | undefined) => (inclusive === false ? { limitItselfCounts: false } : {});

const given = (issue: Issue) => ({ given: shown(issue.input) });

/** Numbers and short texts come back as given; of anything larger, only what it is. */
function shown(input: unknown): unknown {
  if (typeof input === "string") return input.length > 80 ? `${input.slice(0, 77)}...` : input;
  if (typeof input === "number") return Number.isFinite(input) ? input : String(input);
  if (input === null || typeof input === "boolean") return input;
  return Array.isArray(input) ? `a list of ${input.length}` : typeof input;
}

function formOf(issue: Extract<Issue, { code: "invalid_format" }>): string {
  return issue.format === "regex" ? String(issue.pattern) : issue.format;
}
