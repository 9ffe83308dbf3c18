import { z } from "zod";
import type { Plan } from "../../core/plan/plan.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { DayText, InstantText } from "./instant.ts";
import { SIGNS } from "./journal-schema.ts";
import {
  ACTIONS,
  AVOIDS,
  CAUSES,
  CAUTIONS,
  CHECKS,
  CONFIDENCE_WORDS,
  QUESTIONS,
  REASONS,
  STAND_IN_FOR,
} from "./plan-codes.ts";
import type { Proof, SameType } from "./same-type.ts";

const share = z.number().min(0).max(1);
const number = z.number();
const day = DayText.transform((text) => text as CalendarDay);
const numbers = z.record(z.string(), z.union([z.number(), z.string()]));
const SpreadSchema = z
  .strictObject({ low: number, mid: number, high: number })
  .describe("Tenth, fiftieth and ninetieth percentile.");

const WeatherAgeSchema = z.strictObject({
  source: z.enum(["primary", "fallback", "demo", "case"]),
  credit: z.string(),
  fetchedAt: InstantText,
  ageHours: number,
  memberCount: z.int().min(0),
  standIns: z.array(
    z.strictObject({
      quantity: z.enum(STAND_IN_FOR),
      method: z.string(),
      shareOfHoursFrac: share,
      errorEstimate: number,
    }),
  ),
  trust: z.enum(["full", "reduced", "poor"]),
  knownHours: number,
});

const LiftSchema = z.strictObject({
  massKg: number,
  hands: z.enum(["one", "two-people", "trolley"]),
  limitKg: number,
});

const ReasonSchema = z.strictObject({ code: z.enum(REASONS), numbers });

const deed = {
  action: z.enum(ACTIONS),
  amountMl: number.min(0).optional(),
  untilItRunsThrough: z.boolean().optional(),
  toSpotId: z.string().optional(),
  from: InstantText.optional(),
  by: InstantText.optional(),
  until: day.optional(),
  reason: ReasonSchema,
  harmAvoided: number,
  confidence: z.strictObject({ word: z.enum(CONFIDENCE_WORDS), shareFrac: share }),
  lift: LiftSchema.optional(),
  minutes: number.min(0).optional(),
  notCarried: ReasonSchema.optional(),
};

const OutlookSchema = z.strictObject({
  nowFrac: SpreadSchema,
  byDayFrac: z.array(SpreadSchema),
  refillFrac: number,
  capacityMl: number,
  reachesRefillShareFrac: z.array(share),
  wetBaseHours: SpreadSchema,
  coldestC: SpreadSchema,
  daysToRefill: SpreadSchema.nullable(),
  againDays: SpreadSchema.nullable().optional(),
  massKg: number,
  restingShareFrac: number,
  dryUntil: day.nullable(),
  wetAboveFrac: number.optional(),
  learned: z.strictObject({ thirst: SpreadSchema, capacity: SpreadSchema }).optional(),
  aftercare: z
    .strictObject({
      stage: z.enum(["dry", "first-drink", "easing"]),
      dryUntil: day,
      shadeUntil: day,
      noFeedUntil: day,
    })
    .optional(),
  lift: LiftSchema.optional(),
});

const HoldSchema = z.strictObject({
  kind: z.enum(["feed", "full-sun", "repot", "treat"]),
  until: day.nullable(),
  because: z.enum(["fresh-roots", "resting", "cold-nights", "rain", "heat"]),
});

const MilestoneSchema = z.strictObject({ kind: z.enum(["first-drink", "more-sun", "feed"]), day });

const DiagnosisSchema = z.strictObject({
  sign: z.enum(SIGNS),
  notedAt: InstantText,
  causes: z.array(z.strictObject({ code: z.enum(CAUSES), shareFrac: share })),
  check: z.enum(CHECKS),
  avoid: z.array(z.enum(AVOIDS)),
});

const DoubtedSchema = z.strictObject({
  entryId: z.string(),
  notedAt: InstantText,
  expected: z.strictObject({ low: number, high: number, unit: z.enum(["kg", "ml"]) }).optional(),
  wetter: z.boolean(),
  question: z.enum(QUESTIONS),
});

const PotPlanSchema = z.strictObject({
  ...deed,
  potId: z.string(),
  count: z.int().min(1),
  spotId: z.string(),
  // biome-ignore lint/suspicious/noThenProperty: a list in the plan's own shape, never a function, so nothing awaits it
  then: z.array(z.strictObject(deed)),
  holds: z.array(HoldSchema).optional(),
  milestones: z.array(MilestoneSchema).optional(),
  seen: z.array(DiagnosisSchema).optional(),
  doubted: z.array(DoubtedSchema).optional(),
  outlook: OutlookSchema,
});

const SpotPlanSchema = z.strictObject({
  spotId: z.string(),
  potCount: z.int().min(0),
  placesLeft: z.int().nullable(),
  loadKg: z.strictObject({ now: number, soaked: number }).optional(),
  rainByDayMm: z.array(SpreadSchema),
  coldestByDayC: z.array(SpreadSchema),
});

const DayOutlineSchema = z.strictObject({
  day,
  rainMm: SpreadSchema,
  rainShareFrac: share,
  peakRainMmPerH: number,
  tempMinC: SpreadSchema,
  tempMaxC: SpreadSchema,
  gustMPerS: number,
  et0Mm: number,
  thunderHours: z.array(InstantText),
});

const WorkWindowSchema = z.strictObject({
  from: InstantText,
  to: InstantText,
  dryShareFrac: share,
  hottestHeatIndexC: number,
  dryDaysAfter: number,
  prepareFrom: InstantText.optional(),
});

const SkySpellSchema = z.strictObject({
  kind: z.enum(["wet", "cold", "hot", "gusts"]),
  from: InstantText,
  to: InstantText.optional(),
  shareFrac: share,
  numbers: z.record(z.string(), number),
});

const BandSchema = z.strictObject({ toldFrac: share, cameTrueFrac: share, count: z.int().min(1) });
const kept = {
  count: z.int().min(0),
  bands: z.array(BandSchema),
  brier: z
    .strictObject({ score: number, reliability: number, resolution: number, uncertainty: number })
    .nullable(),
  telling: BandSchema.nullable(),
};
const CalibrationSchema = z
  .strictObject({
    rain: z.strictObject({ ...kept, crpsMm: number.nullable(), valueFrac: number.nullable() }),
    dry: z.strictObject(kept),
  })
  .describe("What was told in past plans, scored against what came.");

const CautionSchema = z.strictObject({
  code: z.enum(CAUTIONS),
  potIds: z.array(z.string()),
  from: InstantText.optional(),
  to: InstantText.optional(),
  numbers,
});

const ChangeSchema = z.strictObject({
  potId: z.string(),
  was: z.enum(ACTIONS),
  is: z.enum(ACTIONS),
  because: z.enum(["weather", "journal", "day-passed"]),
});

/** The plan as it is printed, stored and sent: codes and numbers only. */
export const PlanSchema = z.strictObject({
  version: z.literal(1),
  siteId: z.string(),
  zone: z.string(),
  issuedAt: InstantText,
  forDay: day,
  horizon: z.strictObject({ from: InstantText, to: InstantText }),
  weatherAge: WeatherAgeSchema,
  pots: z.array(PotPlanSchema),
  spots: z.array(SpotPlanSchema),
  days: z.array(DayOutlineSchema),
  spells: z.array(SkySpellSchema).optional(),
  workWindows: z.array(WorkWindowSchema),
  cautions: z.array(CautionSchema),
  changesSince: z.array(ChangeSchema),
  kept: CalibrationSchema.optional(),
});

export type PlanIsCore = Proof<SameType<z.output<typeof PlanSchema>, Plan>>;
