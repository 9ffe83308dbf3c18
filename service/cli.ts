import process from "node:process";
import { nearestNames } from "../core/mix/nearest-names.ts";
import { commandHelp, verbHelp } from "./cli/help-text.ts";
import { print, say, sayProblems } from "./cli/output.ts";
import { readArguments } from "./cli/read-arguments.ts";
import { BAD_INPUT, DONE, type ExitCode, FAILED, type Verb } from "./cli/verb.ts";
import { VERBS } from "./cli/verbs.ts";

// A reader that has seen enough (head, less) closes the pipe; that is no failure.
process.stdout.on("error", (error: NodeJS.ErrnoException) =>
  process.exit(error.code === "EPIPE" ? DONE : FAILED),
);

process.exitCode = await command(process.argv.slice(2));

async function command([name, ...args]: readonly string[]): Promise<ExitCode> {
  if (name === undefined || name === "--help" || name === "help") return helpFor(args[0]);
  const verb = VERBS.find((one) => one.name === name);
  return verb ? runVerb(verb, args) : unknownVerb(name);
}

async function helpFor(name: string | undefined): Promise<ExitCode> {
  const verb = VERBS.find((one) => one.name === name);
  if (name !== undefined && !verb) return unknownVerb(name);
  await print(verb ? verbHelp(verb) : commandHelp(VERBS));
  return DONE;
}

function unknownVerb(given: string): ExitCode {
  const known = VERBS.map(({ name }) => name);
  const data = { given, nearest: nearestNames(given, known), known };
  sayProblems("leebench", [{ code: "unknown-verb", path: ["<verb>"], data }]);
  return BAD_INPUT;
}

async function runVerb(verb: Verb, args: readonly string[]): Promise<ExitCode> {
  if (args.includes("--help")) return helpFor(verb.name);
  const read = readArguments(verb, args);
  if (!read.ok) {
    sayProblems(`leebench ${verb.name}`, read.problems);
    say(`leebench ${verb.name} --help tells how it is used.`);
    return BAD_INPUT;
  }
  return verb.run(read.value).catch((error: Error) => failed(verb, error));
}

/** What no verb foresaw: one line for the grower, then the trace for whoever mends it. */
function failed(verb: Verb, error: Error): ExitCode {
  say(`leebench ${verb.name} failed: ${error.message}`);
  say(error.stack ?? "");
  return FAILED;
}
