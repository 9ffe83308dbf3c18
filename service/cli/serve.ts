import process from "node:process";
import { DONE, type ExitCode, type Verb } from "./verb.ts";

export const serve: Verb = {
  about: [
    "The same as npm start. Settings come from the environment, among them LEEBENCH_DATA_DIR, LEEBENCH_HOST, " +
      "LEEBENCH_PORT, LEEBENCH_FEED_URL, LEEBENCH_ENSEMBLE_URL and LEEBENCH_GEOCODING_URL; every fault in them is " +
      "told at once. Ctrl-C ends it.",
  ],
  positionals: [],
  options: {},
  async run() {
    // The service starts as it is imported, and sets the exit code itself when it cannot.
    await import("../main.ts");
    return (process.exitCode as ExitCode | undefined) ?? DONE;
  },
};
