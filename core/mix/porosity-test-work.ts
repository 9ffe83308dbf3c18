import type { Outcome } from "../problem.ts";
import type { PorosityTest } from "./mix.ts";
import { type Porosity, porosityOf, porosityTestProblems } from "./porosity-test.ts";

/** Pores, air and capacity from the grower's own test, or everything about it that cannot be right. */
export function porosityTestWork(input: PorosityTest): Outcome<Porosity> {
  const problems = porosityTestProblems(input);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: porosityOf(input) };
}
