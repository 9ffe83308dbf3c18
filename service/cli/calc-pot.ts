import { z } from "zod";
import { potWorkWithSteps } from "../../core/mix/pot-work.ts";
import { vesselQuestions } from "../../core/pot/vessel-checks.ts";
import { calculation } from "./calc-lines.ts";

/** Shape only: what a number may be is for the core to say, which knows why. */
const LineSchema = z.strictObject({
  mix: z.array(z.strictObject({ component: z.string(), parts: z.number() })).optional(),
  curve: z
    .strictObject({
      residualFrac: z.number(),
      saturatedFrac: z.number(),
      alphaPerCm: z.number(),
      n: z.number(),
    })
    .optional(),
  vessel: z.strictObject({
    shape: z.enum(["round", "square"]),
    topCm: z.number(),
    baseCm: z.number(),
    heightCm: z.number(),
    saucerCm: z.number().optional(),
  }),
});

export const pot = calculation({
  about:
    "what a drained pot holds, from mix: [{ component, parts }] or curve: { residualFrac, saturatedFrac, " +
    "alphaPerCm, n }, and vessel: { shape: round | square, topCm, baseCm, heightCm, saucerCm if it has one }",
  schema: LineSchema,
  work: (line) => potWorkWithSteps(line),
  questions: ({ vessel }) => vesselQuestions({ ...vessel, material: "plastic" }, ["vessel"]),
});
