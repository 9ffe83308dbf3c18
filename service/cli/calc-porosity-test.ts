import { z } from "zod";
import { porosityTestSteps, porosityTestWork } from "../../core/mix/porosity-test-work.ts";
import { calculation } from "./calc-lines.ts";

export const porosityTest = calculation({
  about:
    "pores, air and capacity from a fill-soak-drain test, from potMl, addedMl, drainedMl, heldBeforeMl if any",
  schema: z.strictObject({
    potMl: z.number(),
    addedMl: z.number(),
    drainedMl: z.number(),
    heldBeforeMl: z.number().optional(),
  }),
  work(line) {
    const came = porosityTestWork(line);
    return came.ok
      ? { ok: true, value: { ...came.value, steps: porosityTestSteps(line, came.value) } }
      : came;
  },
});
