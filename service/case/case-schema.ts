import { z } from "zod";
import type { PlanInput } from "../../core/plan/make-plan.ts";
import type { Outcome } from "../../core/problem.ts";
import { caseRules } from "./case-rules.ts";
import { CollectionSchema } from "./collection-schema.ts";
import { InstantMs } from "./instant.ts";
import { JournalEntrySchema } from "./journal-schema.ts";
import { PlanSchema } from "./plan-schema.ts";
import { readBy } from "./problems-from-zod.ts";
import { SettingsSchema } from "./settings-schema.ts";
import { WeatherSchema } from "./weather-schema.ts";

/** One case: everything that a plan depends on, in one JSON object. ISO instants in, epoch milliseconds out. */
export const CaseSchema = z
  .strictObject({
    collection: CollectionSchema,
    journal: z.array(JournalEntrySchema),
    weather: WeatherSchema,
    today: InstantMs.describe("The instant for which the plan is made."),
    settings: SettingsSchema.prefault({}),
    previous: PlanSchema.optional().describe("The plan before this one; changes are told against it."),
  })
  .transform(({ today, ...rest }): PlanInput => ({ ...rest, nowUtcMs: today }));

/** @returns what `plan` takes, or every problem of shape and across fields at once */
export function readCase(given: unknown): Outcome<PlanInput> {
  const read = readBy(CaseSchema, given);
  const acrossFields = caseRules(given);
  if (read.ok && acrossFields.length === 0) return read;
  return { ok: false, problems: [...(read.ok ? [] : read.problems), ...acrossFields] };
}
