import { z } from "zod";
import type { Collection } from "../../core/plan/collection.ts";
import { GroupSchema, GroupValuesSchema } from "./group-schema.ts";
import { DryDaysSchema } from "./journal-schema.ts";
import { ComponentSchema, MixSchema } from "./mix-schema.ts";
import type { Proof, SameType } from "./same-type.ts";
import { SiteSchema, SpotSchema } from "./site-schema.ts";

export const IdSchema = z.string().min(1).max(100);

const PotSchema = z.strictObject({
  id: IdSchema,
  name: z.string().min(1).max(200),
  groupId: IdSchema.describe("A plant group of the library, or one of ownGroups."),
  count: z
    .int()
    .min(1)
    .max(10_000)
    .optional()
    .describe("How many alike are handled as one; 1 when left out."),
  canopyWidthCm: z.number().min(0).max(2000),
  plantHeightCm: z.number().min(0).max(3000),
  own: GroupValuesSchema.partial().optional().describe("The grower's own values in place of the group's."),
  dryDays: DryDaysSchema.optional(),
  firstSpotId: IdSchema,
});

/** Everything that stands at one site, as it is written in a case or an export. */
export const CollectionSchema = z.strictObject({
  site: SiteSchema,
  spots: z.array(SpotSchema),
  mixes: z.array(MixSchema),
  pots: z.array(PotSchema),
  ownComponents: z.array(ComponentSchema).optional(),
  ownGroups: z.array(GroupSchema).optional(),
});

export type CollectionIsCore = Proof<SameType<z.output<typeof CollectionSchema>, Collection>>;
