import type { Problem } from "../problem.ts";
import type { PorosityTest } from "./mix.ts";

/** What the fill-soak-drain test says of the mix, shares of its volume. */
export interface Porosity {
  readonly totalPorosityFrac: number;
  readonly airSpaceFrac: number;
  readonly capacityFrac: number;
}

/**
 * Pores, air and capacity from a test that passed `porosityTestProblems`: all pores take the water poured in and what
 * was there before, air takes what drains. [FONTENO1995]
 */
export function porosityOf(test: PorosityTest): Porosity {
  const totalPorosityFrac = pooledMlOf(test) / test.potMl;
  const airSpaceFrac = test.drainedMl / test.potMl;
  return { totalPorosityFrac, airSpaceFrac, capacityFrac: totalPorosityFrac - airSpaceFrac };
}

/** Water that stood in the soaked pot: what was poured in and what was there before. */
export function pooledMlOf({ addedMl, heldBeforeMl = 0 }: PorosityTest): number {
  return addedMl + heldBeforeMl;
}

/** Everything about a test that cannot be right. */
export function porosityTestProblems(test: PorosityTest, path: readonly (string | number)[] = []): Problem[] {
  const { potMl, addedMl, drainedMl, heldBeforeMl = 0 } = test;
  const problems: Problem[] = [];
  const complain = (code: string, field: keyof PorosityTest, more?: Record<string, unknown>) =>
    problems.push({ code, path: [...path, field], data: { given: test[field], ...more } });
  if (!isAbove(potMl)) complain("not-above-zero", "potMl");
  if (!isAbove(addedMl)) complain("not-above-zero", "addedMl");
  if (!isAtLeastZero(drainedMl)) complain("below-zero", "drainedMl");
  if (!isAtLeastZero(heldBeforeMl)) complain("below-zero", "heldBeforeMl");
  if (problems.length > 0) return problems;
  const pooledMl = pooledMlOf(test);
  if (drainedMl > pooledMl)
    complain("drained-more-than-poured", "drainedMl", { pouredMl: addedMl, heldBeforeMl });
  if (pooledMl >= potMl) complain("more-water-than-pot", "addedMl", { potMl, heldBeforeMl });
  return problems;
}

function isAbove(value: number): boolean {
  return Number.isFinite(value) && value > 0;
}

function isAtLeastZero(value: number): boolean {
  return Number.isFinite(value) && value >= 0;
}
