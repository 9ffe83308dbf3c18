import { z } from "zod";
import { potWork } from "../../core/mix/pot-work.ts";
import { vesselQuestions } from "../../core/pot/vessel-checks.ts";
import type { Outcome } from "../../core/problem.ts";
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
    "alphaPerCm, n }, and vessel: { shape: round | square, topCm, baseCm, heightCm, saucerCm if it has one }. " +
    "What is possible but odd comes back beside the figures as questions",
  schema: LineSchema,
  work: (line) => withQuestions(line, potWork(line)),
});

function withQuestions(line: z.output<typeof LineSchema>, came: Outcome<object>): Outcome<object> {
  if (!came.ok) return came;
  const questions = vesselQuestions({ ...line.vessel, material: "plastic" }, ["vessel"]);
  return questions.length > 0 ? { ok: true, value: { ...came.value, questions } } : came;
}
