import { z } from "zod";
import { type Component, TOLD_FIGURES } from "../../core/mix/component.ts";
import type { Mix } from "../../core/mix/mix.ts";
import type { Vessel } from "../../core/pot/vessel.ts";
import type { Proof, SameType } from "./same-type.ts";

const share = z.number().min(0).max(1);

/** Retention curve of a mix or component. */
export const CurveSchema = z.strictObject({
  residualFrac: share,
  saturatedFrac: z.number().gt(0).max(1),
  alphaPerCm: z.number().gt(0).max(20),
  n: z.number().gt(1).max(10),
});

export const VesselSchema = z.strictObject({
  shape: z.enum(["round", "square"]),
  topCm: z.number().gt(0).max(500),
  baseCm: z.number().gt(0).max(500),
  heightCm: z.number().gt(0).max(500),
  material: z.enum(["plastic", "glazed", "unglazed", "fabric", "metal", "wood"]),
  rimGapCm: z.number().min(0).max(100).optional(),
  saucerCm: z.number().min(0).max(100).optional(),
  topDressingCm: z.number().min(0).max(50).optional(),
  emptyMassKg: z.number().min(0).max(1000).optional(),
});

/** Parts of components by loose volume. */
export const MixPartsSchema = z
  .array(z.strictObject({ component: z.string().min(1).max(100), parts: z.number().gt(0).max(10_000) }))
  .min(1);

/** The grower's own fill-soak-drain test. */
export const PorosityTestSchema = z.strictObject({
  potMl: z.number().gt(0),
  addedMl: z.number().min(0),
  drainedMl: z.number().min(0),
  heldBeforeMl: z.number().min(0).optional(),
});

export const MixSchema = z.strictObject({
  id: z.string().min(1).max(100),
  name: z.string().min(1).max(200),
  recipe: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("parts"), parts: MixPartsSchema }),
    z.strictObject({
      kind: z.literal("curve"),
      curve: CurveSchema,
      dryDensityKgPerL: z.number().gt(0).max(5),
    }),
  ]),
  test: PorosityTestSchema.optional(),
});

const RangedSchema = z.strictObject({ low: z.number(), mid: z.number(), high: z.number() });

export const ComponentSchema = z.strictObject({
  id: z.string().min(1).max(100),
  name: z.string().min(1).max(200).optional(),
  dryDensityKgPerL: RangedSchema,
  totalPorosityFrac: RangedSchema,
  waterAt10cmFrac: RangedSchema,
  waterAt50cmFrac: RangedSchema,
  waterAt100cmFrac: RangedSchema,
  cupCapacityFrac: RangedSchema.optional(),
  curve: CurveSchema,
  asWateredFactor: RangedSchema.optional(),
  repellentBelowFrac: share.optional(),
  grain: z.enum(["fine", "medium", "coarse"]),
  grainMm: z.number().gt(0).max(200).optional(),
  crumbly: z.boolean().optional(),
  role: z.enum(["draining", "holding"]),
  compost: z.boolean(),
  prepare: z.array(z.enum(["rinse", "sieve", "soak", "damp-down", "let-mature"])),
  nutrients: z.enum(["none", "low", "rich", "locks-nitrogen"]),
  caution: z.enum(["none", "dust", "silica-dust", "mould-and-bacteria"]),
  status: z.enum(["published", "hobby-or-seller", "relative-measured", "from-memory", "own"]),
  told: z.array(z.enum(TOLD_FIGURES)).optional(),
  sources: z.array(z.string()),
});

export type VesselIsCore = Proof<SameType<z.output<typeof VesselSchema>, Vessel>>;
export type MixIsCore = Proof<SameType<z.output<typeof MixSchema>, Mix>>;
export type ComponentIsCore = Proof<SameType<z.output<typeof ComponentSchema>, Component>>;
