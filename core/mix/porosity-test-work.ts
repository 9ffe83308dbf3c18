import type { Outcome } from "../problem.ts";
import type { WorkStep } from "../weather/work/work-step.ts";
import type { PorosityTest } from "./mix.ts";
import { type Porosity, pooledMlOf, porosityOf, porosityTestProblems } from "./porosity-test.ts";

/** Pores, air and capacity from the grower's own test, or everything about it that cannot be right. */
export function porosityTestWork(input: PorosityTest): Outcome<Porosity> {
  const problems = porosityTestProblems(input);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: porosityOf(input) };
}

/** The way from the poured and drained water of a test to its shares. */
export function porosityTestSteps(test: PorosityTest, porosity: Porosity): WorkStep[] {
  return [
    { name: "pooledMl", value: pooledMlOf(test), unit: "mL", equation: "FONTENO1995: added and held before" },
    share("totalPorosityFrac", porosity.totalPorosityFrac, "FONTENO1995: all water over the pot"),
    share("airSpaceFrac", porosity.airSpaceFrac, "FONTENO1995: drained water over the pot"),
    share("capacityFrac", porosity.capacityFrac, "FONTENO1995: total porosity less air space"),
  ];
}

function share(name: string, value: number, equation: string): WorkStep {
  return { name, value, unit: "1", equation };
}
