import process from "node:process";
import { SETTING_NAMES } from "../environment-schema.ts";
import { DONE, type ExitCode, type Verb } from "./verb.ts";

export const serve: Verb = {
  about: [
    "The same as npm start. Settings come from the environment; every fault in them is told at once. Ctrl-C ends it.",
    `The settings: ${SETTING_NAMES.join(", ")}.`,
  ],
  positionals: [],
  options: {},
  async run() {
    // The service starts as it is imported, and sets the exit code itself when it cannot.
    await import("../main.ts");
    return (process.exitCode as ExitCode | undefined) ?? DONE;
  },
};
