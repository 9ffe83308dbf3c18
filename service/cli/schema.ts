import { z } from "zod";
import { CaseSchema } from "../case/case-schema.ts";
import { PlanSchema } from "../case/plan-schema.ts";
import { ExportSchema } from "../store/export-schema.ts";
import { print } from "./output.ts";
import { DONE, type Verb } from "./verb.ts";

const CHOICES = {
  case: "what leebench plan reads",
  plan: "what leebench plan and leebench brief --json print",
  export: "what leebench export prints and leebench import reads",
} as const;

const SCHEMAS: Readonly<Record<string, z.ZodType>> = {
  case: CaseSchema,
  plan: PlanSchema,
  export: ExportSchema,
};

export const schema: Verb = {
  about: ["Prints a JSON Schema (draft 2020-12), made from the same types that check the input."],
  positionals: [{ name: "what", about: "one of", choices: CHOICES }],
  options: {},
  async run({ words }) {
    const document = z.toJSONSchema(SCHEMAS[words[0]!]!, { io: "input" });
    await print(`${JSON.stringify(document, null, 2)}\n`);
    return DONE;
  },
};
