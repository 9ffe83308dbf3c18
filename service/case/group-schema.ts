import { z } from "zod";
import type { GroupValues, PlantGroup } from "../../core/plant/group.ts";
import type { Proof, SameType } from "./same-type.ts";

const tempC = z.number().min(-60).max(60);
const share = z.number().min(0).max(1);

export const GroupValuesSchema = z.strictObject({
  killC: tempC,
  damageC: tempC,
  stopWaterNightC: tempC.nullable(),
  cutWaterNightC: tempC,
  refillFrac: share,
  restRefillFrac: share,
  basalCoefficient: z.number().min(0).max(3),
  restCoefficient: z.number().min(0).max(3),
  depletionFrac: share,
  growth: z.enum(["warm", "cool", "any"]),
  fixedRest: z.boolean(),
  leaflessIsRest: z.boolean(),
  leafy: z.boolean(),
  wetBaseHours: z.number().min(0),
  dryDays: z.number().min(0),
  lightMjPerM2PerDay: z.number().min(0).max(40),
  heatC: tempC,
  sap: z.enum(["none", "irritant", "toxic"]),
});

const EvidenceSchema = z.strictObject({
  status: z.enum(["published", "grower-report", "common-practice", "chosen"]),
  key: z.string().nullable(),
});

const VALUE_NAMES = GroupValuesSchema.keyof();

/** A group of the grower's own; values without evidence count as the grower's own choice. */
export const GroupSchema = z
  .strictObject({
    id: z.string().min(1).max(100),
    values: GroupValuesSchema,
    evidence: z.partialRecord(VALUE_NAMES, EvidenceSchema).optional(),
  })
  .transform((group) => ({ ...group, evidence: wholeEvidence(group.evidence ?? {}) }));

export type GroupValuesAreCore = Proof<SameType<z.output<typeof GroupValuesSchema>, GroupValues>>;
export type GroupIsCore = Proof<SameType<z.output<typeof GroupSchema>, PlantGroup>>;

type Evidence = Record<keyof GroupValues, z.output<typeof EvidenceSchema>>;

function wholeEvidence(given: Partial<Evidence>): Evidence {
  const chosen = VALUE_NAMES.options.map((name) => [name, { status: "chosen", key: null }]);
  return { ...(Object.fromEntries(chosen) as Evidence), ...given };
}
