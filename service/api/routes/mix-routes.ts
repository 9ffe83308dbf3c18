import { z } from "zod";
import { batch } from "../../../core/mix/batch.ts";
import { fitness } from "../../../core/mix/fitness.ts";
import { componentsById } from "../../../core/mix/library.ts";
import { mixFigures } from "../../../core/mix/mix-figures.ts";
import { mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { workedMix } from "../../../core/mix/worked-mix.ts";
import { MixPartsSchema, PorosityTestSchema, VesselSchema } from "../../case/mix-schema.ts";
import { type ApiRoute, unfit } from "../api-route.ts";

const group = "mix bench";
const Ranged = z.object({ low: z.number(), mid: z.number(), high: z.number() });

const Bench = z.strictObject({
  parts: MixPartsSchema,
  test: PorosityTestSchema.optional(),
  vessel: VesselSchema.optional(),
  purpose: z.enum(["leafy", "dry"]).default("leafy").describe("dry: for succulents and their like."),
});

const Figures = z.object({
  figures: z.record(z.string(), Ranged).describe("Of the mix alone; names end in their unit."),
  hold: z
    .record(z.string(), z.number())
    .nullable()
    .describe("What it holds in the vessel; null without one."),
  findings: z.array(
    z.object({
      code: z.string(),
      numbers: z.record(z.string(), z.number()),
      status: z.string(),
      cure: z.unknown().describe("The smallest change in parts that mends it; null where none was found."),
    }),
  ),
});

const BatchAsk = z.strictObject({
  parts: MixPartsSchema,
  pots: z
    .array(z.strictObject({ count: z.int().min(1).max(10_000), vessel: VesselSchema }))
    .min(1)
    .max(100),
  spareFrac: z.number().min(0).max(2).optional().describe("A tenth when left out."),
  bagLitres: z.record(z.string(), z.number().min(0.5).max(2000)).optional(),
});

const Batch = z.object({
  potLitres: z.number(),
  mixedLitres: z.number(),
  looseLitres: z.number(),
  shrinkFrac: z.number(),
  lines: z.array(
    z.object({
      component: z.string(),
      litres: z.number(),
      bags: z.number().nullable(),
      dryMassKg: Ranged,
    }),
  ),
  dressingLitres: z.number(),
  dryMassKg: Ranged,
  care: z.array(z.unknown()),
  starts: z.array(z.unknown()),
});

/** What a mix will hold before it is made, and how much of what to fetch. */
export const mixRoutes: readonly ApiRoute[] = [
  {
    method: "POST",
    path: "/sites/{siteId}/mix-figures",
    id: "mixFigures",
    group,
    summary: "Figures of a mix that need not be kept, and what growers would change in it; keeps nothing",
    body: Bench,
    answer: Figures,
    faults: [404, 422],
    async handle({ context, site, body }) {
      const { parts, test, vessel } = body;
      const components = componentsById((await context.store.collection(site.id)).ownComponents);
      const mix = {
        id: "bench",
        name: "",
        recipe: { kind: "parts" as const, parts },
        ...(test ? { test } : {}),
      };
      const worked = workedMix(mix, components);
      if (!worked.ok) return unfit(worked.problems);
      const held = vessel ? mixInVessel({ mix, vessel, components }) : null;
      if (held?.ok === false) return unfit(held.problems);
      const purpose = { leafy: body.purpose === "leafy" };
      const judged = fitness({ parts, components, purpose, ...(vessel ? { vessel } : {}) });
      if (!judged.ok) return unfit(judged.problems);
      const findings = judged.value.map(({ code, numbers, status, cure }) => ({
        code,
        numbers,
        status,
        cure,
      }));
      return { body: { figures: mixFigures(worked.value), hold: held?.value.hold ?? null, findings } };
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/batch",
    id: "batch",
    group,
    summary: "Litres, bags and kilograms for some pots; keeps nothing",
    body: BatchAsk,
    answer: Batch,
    faults: [404, 422],
    async handle({ context, site, body }) {
      const components = componentsById((await context.store.collection(site.id)).ownComponents);
      const windows = (await context.store.plans.latest(site.id))?.workWindows ?? [];
      const made = batch({ ...body, components, windows, nowUtcMs: context.now() });
      return made.ok ? { body: made.value } : unfit(made.problems);
    },
  },
];
