import { parseArgs } from "node:util";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Outcome, Problem } from "../../core/problem.ts";
import type { Arguments, Positional, Verb } from "./verb.ts";

/** Reads what stands after the verb; every fault at once. */
export function readArguments(verb: Verb, args: readonly string[]): Outcome<Arguments> {
  const options = Object.fromEntries(
    Object.entries(verb.options).map(([name, { type }]) => [name, { type }]),
  );
  const { tokens } = parseArgs({
    args: [...args],
    options,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const given = tokens.filter((token) => token.kind === "option");
  const words = tokens.filter((token) => token.kind === "positional").map(({ value }) => value);
  const problems = [
    ...given.flatMap(({ rawName, name, value }) => optionFaults(verb, { rawName, name, value })),
    ...wordFaults(verb.positionals, words),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const read = given.map(({ name, value }) => [name, value ?? true] as const);
  return { ok: true, value: { options: Object.fromEntries(read), words } };
}

function optionFaults(
  verb: Verb,
  { rawName, name, value }: { rawName: string; name: string; value: string | undefined },
): Problem[] {
  const known = [...Object.keys(verb.options), "help"];
  const option = Object.hasOwn(verb.options, name) ? verb.options[name] : undefined;
  if (!option) {
    const nearest = nearestNames(name, known).map((other) => `--${other}`);
    return [{ code: "unknown-option", path: [rawName], data: { nearest } }];
  }
  if (option.type === "boolean" && value !== undefined) {
    return [{ code: "option-takes-no-value", path: [rawName], data: { given: value } }];
  }
  if (option.type === "string" && value === undefined) {
    return [{ code: "option-needs-a-value", path: [rawName], data: { expected: option.value } }];
  }
  return [];
}

function wordFaults(positionals: readonly Positional[], words: readonly string[]): Problem[] {
  const tooMany = words
    .slice(positionals.length)
    .map((given) => ({ code: "unexpected-word", path: [given] }));
  return [...positionals.flatMap((positional, index) => wordFault(positional, words[index])), ...tooMany];
}

function wordFault({ name, choices }: Positional, given: string | undefined): Problem[] {
  const known = choices && Object.keys(choices);
  if (given === undefined) return [{ code: "missing", path: [`<${name}>`], data: known ? { known } : {} }];
  if (!known || known.includes(given)) return [];
  return [
    { code: "not-one-of", path: [`<${name}>`], data: { given, nearest: nearestNames(given, known), known } },
  ];
}
