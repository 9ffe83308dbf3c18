import { nearestNames } from "../../core/mix/nearest-names.ts";
import { commandHelp, verbHelp } from "./help-text.ts";
import { print, say, sayProblems } from "./output.ts";
import { readArguments } from "./read-arguments.ts";
import { BAD_INPUT, DONE, type ExitCode, FAILED } from "./verb.ts";
import { VERBS, type VerbEntry } from "./verbs.ts";

/** One command from its words to its exit code; what it says goes to the standard streams. */
export async function command([name, ...args]: readonly string[]): Promise<ExitCode> {
  if (name === undefined || name === "help" || asksForHelp(name)) return helpFor(args[0]);
  const entry = VERBS.find((one) => one.name === name);
  if (!entry) return unknownVerb(name);
  if (args.some(asksForHelp)) return helpFor(name);
  return runVerb(entry, args).catch((error: Error) => failed(name, error));
}

function asksForHelp(word: string): boolean {
  return word === "--help" || word === "-h";
}

async function helpFor(name: string | undefined): Promise<ExitCode> {
  const entry = VERBS.find((one) => one.name === name);
  if (name !== undefined && !entry) return unknownVerb(name);
  await print(entry ? verbHelp(entry.name, await entry.load()) : commandHelp(VERBS));
  return DONE;
}

function unknownVerb(given: string): ExitCode {
  const known = VERBS.map(({ name }) => name);
  const data = { given, nearest: nearestNames(given, known), known };
  sayProblems("leebench", [{ code: "unknown-verb", path: ["<verb>"], data }]);
  return BAD_INPUT;
}

async function runVerb({ name, load }: VerbEntry, args: readonly string[]): Promise<ExitCode> {
  const verb = await load();
  const read = readArguments(verb, args);
  if (read.ok) return verb.run(read.value);
  sayProblems(`leebench ${name}`, read.problems);
  say(`leebench ${name} --help tells how it is used.`);
  return BAD_INPUT;
}

/** What no verb foresaw: one line for the grower, then the trace for whoever mends it. */
function failed(name: string, error: Error): ExitCode {
  say(`leebench ${name} failed: ${error.message}`);
  say(error.stack ?? "");
  return FAILED;
}
