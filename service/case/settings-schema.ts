import { z } from "zod";
import { DEFAULT_SETTINGS, type Settings } from "../../core/plan/settings.ts";
import { DryDaysSchema } from "./journal-schema.ts";
import type { Proof, SameType } from "./same-type.ts";

const localHour = z.number().min(0).max(24);

/** The grower's choices; whatever is left out takes its usual value. */
export const SettingsSchema = z.strictObject({
  seed: z.int().min(0).max(0xffffffff).default(DEFAULT_SETTINGS.seed),
  cloudSize: z.int().min(2).max(1001).default(DEFAULT_SETTINGS.cloudSize),
  horizonDays: z.int().min(1).max(14).default(DEFAULT_SETTINGS.horizonDays),
  tripWorth: z.number().min(0).max(1000).default(DEFAULT_SETTINGS.tripWorth),
  dayStartsHour: localHour.default(DEFAULT_SETTINGS.dayStartsHour),
  dayEndsHour: localHour.default(DEFAULT_SETTINGS.dayEndsHour),
  dryDays: DryDaysSchema.optional(),
  tripsBeforeWork: z.int().min(0).max(10_000).optional(),
  liftLimitKg: z.number().gt(0).max(200).optional(),
});

export type SettingsAreCore = Proof<SameType<z.output<typeof SettingsSchema>, Settings>>;
