import type { Outcome } from "../../core/problem.ts";
import { demoCase } from "../../demo/demo-case.ts";
import { demoCollection } from "../../demo/harbour.ts";
import { type RunningDemo, startDemo } from "../../demo/start-demo.ts";
import { briefOf } from "../brief/brief.ts";
import { briefText } from "../brief/brief-text.ts";
import { writeCase } from "../case/write-case.ts";
import { readSettings, type ServiceSettings } from "../config.ts";
import { wordsFor } from "../words/words.ts";
import { print, sayProblems } from "./output.ts";
import { untilStopped } from "./until-stopped.ts";
import { BAD_INPUT, DONE, type ExitCode, FAILED, type Verb } from "./verb.ts";

export const demo: Verb = {
  about: [
    "Starts the real service on an invented collection and a stand-in feed on this machine: no network, no account. " +
      "Prints the brief and the address of the pages and stays up until Ctrl-C. Its data are apart from yours and are " +
      "removed at the end.",
  ],
  positionals: [],
  options: {
    port: { type: "string", value: "port", about: "where the pages are; the next free port if it is taken" },
    "print-case": { type: "boolean", about: "print the demonstration as one case for leebench plan and end" },
  },
  async run({ options }) {
    if (options["print-case"]) return printCase();
    const settings = demoSettings(options.port as string | undefined);
    if (!settings.ok) {
      sayProblems("leebench demo", settings.problems);
      return BAD_INPUT;
    }
    return show(settings.value);
  },
};

async function printCase(): Promise<ExitCode> {
  const made = await demoCase(Date.now());
  if (!made.ok) {
    sayProblems("leebench demo", made.problems);
    return FAILED;
  }
  await print(`${JSON.stringify(writeCase(made.value))}\n`);
  return DONE;
}

/** Of the user's own settings only language and units count here. */
function demoSettings(port: string | undefined): Outcome<ServiceSettings> {
  const { LEEBENCH_LOCALE, LEEBENCH_UNITS } = process.env;
  const read = readSettings({
    LEEBENCH_LOCALE,
    LEEBENCH_UNITS,
    LEEBENCH_PORT: port,
    LEEBENCH_LOG_LEVEL: "error",
  });
  if (read.ok) return read;
  const asOption = (name: string | number) => (name === "LEEBENCH_PORT" ? "--port" : name);
  return {
    ok: false,
    problems: read.problems.map((problem) => ({ ...problem, path: problem.path.map(asOption) })),
  };
}

async function show(settings: ServiceSettings): Promise<ExitCode> {
  // Asked for first, so that Ctrl-C while it starts still cleans up.
  const stopped = untilStopped();
  const running = await startDemo(settings, Date.now());
  try {
    await printBrief(running, settings);
    await print(
      `The pages of this demonstration are at ${running.url}\n` +
        `Its data are in ${running.dataDir} and are removed when Ctrl-C ends it.\n`,
    );
    await stopped;
    return DONE;
  } finally {
    await running.close();
  }
}

async function printBrief({ plan }: RunningDemo, { locale, units }: ServiceSettings): Promise<void> {
  if (!plan.ok) return sayProblems("leebench demo", plan.problems);
  const words = wordsFor(locale, units);
  await print(`${briefText(briefOf({ plan: plan.value, collection: demoCollection, words }))}\n`);
}
