import { z } from "zod";
import type { Plan } from "../../core/plan/plan.ts";
import { CollectionSchema } from "../case/collection-schema.ts";
import { DayText, InstantMs } from "../case/instant.ts";
import { JournalEntrySchema } from "../case/journal-schema.ts";
import { SettingsSchema } from "../case/settings-schema.ts";
import { WeatherSchema } from "../case/weather-schema.ts";
import { photoSize } from "../photos/photo-name.ts";

/** Plans were made by older programs too: only what places them is checked, so that no export is ever refused for them. */
const PastPlanSchema = z
  .record(z.string(), z.unknown())
  .refine((plan) => plan.version === 1 && DayText.safeParse(plan.forDay).success, {
    params: { code: "not-a-plan" },
  })
  .transform((plan) => plan as unknown as Plan);

const PlanRowSchema = z.strictObject({
  kind: z.enum(["morning", "amendment", "asked", "watch"]),
  madeAt: InstantMs,
  late: z.boolean(),
  plan: PastPlanSchema,
});

const PhotoSchema = z.strictObject({
  id: z.string().refine((id) => photoSize(id) !== null, { params: { code: "not-a-photo" } }),
  /** Every kept photo is WebP, which begins so; anything else was not kept by us. */
  webp: z.base64().refine((text) => text.startsWith("UklGR"), { params: { code: "not-a-photo" } }),
});

const SiteExportSchema = z.strictObject({
  collection: CollectionSchema,
  settings: SettingsSchema,
  journal: z
    .array(JournalEntrySchema)
    .describe("As written, corrections and undos included, in the order of arrival."),
  pastWeather: WeatherSchema.nullable().describe("Hours gone by as last known, from the first that is kept."),
  latestWeather: WeatherSchema.nullable().describe(
    "The newest forecast, so that a plan can be made at once.",
  ),
  photos: z.array(PhotoSchema).optional().describe("Photos that entries refer to, in base64."),
  plans: z.array(PlanRowSchema).describe("Oldest first."),
});

/** Everything of a house in one JSON object. Instants are ISO 8601 in UTC; numbers carry their unit in their name. */
export const ExportSchema = z.strictObject({
  format: z.literal("leebench-export"),
  version: z.literal(1),
  exportedAt: InstantMs,
  sites: z.array(SiteExportSchema),
});

export type WrittenExport = z.input<typeof ExportSchema>;
export type ReadExport = z.output<typeof ExportSchema>;
