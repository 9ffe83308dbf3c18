import { plan as makePlan } from "../../core/plan/make-plan.ts";
import { readCase } from "../case/case-schema.ts";
import { readJson } from "./input.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

export const plan: Verb = {
  about: [
    "Reads one JSON case (collection, journal, weather, today, settings and, if there is one, the previous plan) from " +
      "standard input and prints the plan as JSON. The same case gives the same bytes.",
    "leebench schema case describes the case; npm run -s demo -- --print-case prints one to begin with.",
  ],
  positionals: [],
  options: {},
  async run() {
    const json = await readJson();
    const read = json.ok ? readCase(json.value) : json;
    if (!read.ok) {
      sayProblems("leebench plan", read.problems);
      return BAD_INPUT;
    }
    await print(`${JSON.stringify(makePlan(read.value))}\n`);
    return DONE;
  },
};
