import { z } from "zod";
import { CaseSchema } from "../case/case-schema.ts";
import { PlanSchema } from "../case/plan-schema.ts";
import { print } from "./output.ts";
import { DONE, type Verb } from "./verb.ts";

const CHOICES = {
  case: "what leebench plan reads",
  plan: "what leebench plan and leebench brief --json print",
} as const;

export const schema: Verb = {
  about: ["Prints a JSON Schema (draft 2020-12) made from the same types that check the input."],
  positionals: [{ name: "what", about: "one of", choices: CHOICES }],
  options: {},
  async run({ words }) {
    const document =
      words[0] === "case"
        ? z.toJSONSchema(CaseSchema, { io: "input" })
        : z.toJSONSchema(PlanSchema, { io: "input" });
    await print(`${JSON.stringify(document, null, 2)}\n`);
    return DONE;
  },
};
