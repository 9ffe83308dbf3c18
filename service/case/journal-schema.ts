import { z } from "zod";
import type { EntryBody, JournalEntry } from "../../core/journal/entry.ts";
import { InstantMs } from "./instant.ts";
import { VesselSchema } from "./mix-schema.ts";
import type { Proof, SameType } from "./same-type.ts";

const id = z.string().min(1).max(100);
const words = z.string().max(10_000);
const volumeMl = z.number().min(0).max(1_000_000);

const GivenSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("measured"), waterMl: volumeMl }),
  z.strictObject({ kind: z.literal("ran-through") }),
  z.strictObject({ kind: z.literal("poured-drained"), pouredMl: volumeMl, drainedMl: volumeMl }),
]);

const ROOT_WORK = ["undisturbed", "teased", "pruned", "bare-root", "rot-surgery", "cutting"] as const;
export const RootWorkSchema = z.enum(ROOT_WORK);

/** Days of keeping dry at 20 °C, by root work. */
export const DryDaysSchema = z.partialRecord(RootWorkSchema, z.number().min(0).max(120));

export const SIGNS = [
  "wilting",
  "soft-stem",
  "wrinkled",
  "yellow-leaves",
  "dropped-leaves",
  "water-runs-through",
  "pests",
  "scorched",
  "other",
] as const;

const aboutOnePot = [
  z.strictObject({
    kind: z.literal("planted"),
    vessel: VesselSchema,
    mixId: id,
    roots: RootWorkSchema,
    mixWet: z.enum(["dry", "moist", "watered-in"]).optional(),
  }),
  z.strictObject({ kind: z.literal("watered"), given: GivenSchema }),
  z.strictObject({ kind: z.literal("moved"), toSpotId: id }),
  z.strictObject({ kind: z.literal("weighed"), massKg: z.number().gt(0).max(5000) }),
  z.strictObject({
    kind: z.literal("checked"),
    dryToCm: z.number().min(0).max(500).optional(),
    feel: z.enum(["light", "middling", "heavy"]).optional(),
  }),
  z.strictObject({ kind: z.literal("fed") }),
  z.strictObject({ kind: z.literal("treated"), text: words.optional() }),
  z.strictObject({ kind: z.literal("pruned") }),
  z.strictObject({ kind: z.literal("leaf"), state: z.enum(["in-leaf", "leafless", "new-growth"]) }),
  z.strictObject({ kind: z.literal("trouble"), sign: z.enum(SIGNS), text: words.optional() }),
  z.strictObject({ kind: z.literal("note"), text: words }),
  z.strictObject({ kind: z.literal("photo"), ref: z.string().min(1).max(500), text: words.optional() }),
  z.strictObject({ kind: z.literal("gone"), how: z.enum(["died", "given-away", "other"]) }),
] as const;

const aboutTheSite = [
  z
    .strictObject({ kind: z.literal("rain-gauge"), rainMm: z.number().min(0).max(2000), since: InstantMs })
    .transform(({ since, ...body }) => ({ ...body, sinceUtcMs: since })),
  z
    .strictObject({
      kind: z.literal("thermometer"),
      minC: z.number().min(-90).max(60),
      maxC: z.number().min(-90).max(60).optional(),
      since: InstantMs,
    })
    .transform(({ since, ...body }) => ({ ...body, sinceUtcMs: since })),
] as const;

const undo = z.strictObject({ kind: z.literal("undo"), ofEntryId: id });

const correction = z
  .strictObject({
    kind: z.literal("correction"),
    ofEntryId: id,
    at: InstantMs,
    potId: id.optional(),
    body: z.lazy((): z.ZodType<EntryBody> => EntryBodySchema),
  })
  .transform(({ at, ...body }) => ({ ...body, atUtcMs: at }));

export const EntryBodySchema = z.discriminatedUnion("kind", [
  ...aboutOnePot,
  ...aboutTheSite,
  undo,
  correction,
]);

export const JournalEntrySchema = z
  .strictObject({
    id,
    at: InstantMs.describe("When it happened."),
    recordedAt: InstantMs.optional().describe("When it was written down; `at` when left out."),
    potId: id.optional(),
    body: EntryBodySchema,
  })
  .transform(({ at, recordedAt, ...entry }) => ({ ...entry, atUtcMs: at, recordedUtcMs: recordedAt ?? at }));

export type BodyIsCore = Proof<SameType<z.output<typeof EntryBodySchema>, EntryBody>>;
export type EntryIsCore = Proof<SameType<z.output<typeof JournalEntrySchema>, JournalEntry>>;
