import { planFrom } from "../../core/plan/make-plan.ts";
import { weigh } from "../../core/plan/weigh.ts";
import { readCase } from "../case/case-schema.ts";
import { readJson } from "./input.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

export const plan: Verb = {
  about: [
    "Reads one JSON case (collection, journal, weather, today, settings and, if there is one, the previous plan) from " +
      "standard input and prints the plan as JSON. The same case gives the same bytes.",
    "What does not count in the case, such as a pot without a planting, or does not fit, such as a weight that no such " +
      "pot can have, is told on standard error; the plan is made all the same.",
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
    const weighed = weigh(read.value);
    await print(`${JSON.stringify(planFrom(weighed, read.value))}\n`);
    if (weighed.notes.length > 0) sayProblems("leebench plan, planned all the same", weighed.notes);
    return DONE;
  },
};
