import type { Outcome, Problem } from "../problem.ts";
import type { PorosityTest } from "./mix.ts";
import { porosityTestProblems } from "./porosity-test.ts";

/** The same test read off a kitchen scale: the pot with its mix before, soaked with the holes shut, and drained. */
export interface WeighedTest {
  readonly potMl: number;
  readonly filledKg: number;
  readonly soakedKg: number;
  readonly drainedKg: number;
  /** Water already in the mix before the test, where it was not dry. */
  readonly heldBeforeMl?: number;
}

const ML_PER_KG = 1000;

/** The weighed test as volumes, or everything about it that cannot be right. */
export function porosityTestByScale(weighed: WeighedTest): Outcome<PorosityTest> {
  const problems = weightProblems(weighed);
  if (problems.length > 0) return { ok: false, problems };
  const { potMl, filledKg, soakedKg, drainedKg, heldBeforeMl } = weighed;
  const test = {
    potMl,
    addedMl: (soakedKg - filledKg) * ML_PER_KG,
    drainedMl: (soakedKg - drainedKg) * ML_PER_KG,
    ...(heldBeforeMl === undefined ? {} : { heldBeforeMl }),
  };
  const volumeProblems = porosityTestProblems(test);
  return volumeProblems.length > 0 ? { ok: false, problems: volumeProblems } : { ok: true, value: test };
}

function weightProblems({ filledKg, soakedKg, drainedKg }: WeighedTest): Problem[] {
  const weights = { filledKg, soakedKg, drainedKg };
  const problems: Problem[] = Object.entries(weights).flatMap(([field, given]) =>
    Number.isFinite(given) && given > 0 ? [] : [{ code: "not-above-zero", path: [field], data: { given } }],
  );
  if (problems.length > 0) return problems;
  if (soakedKg <= filledKg)
    problems.push({ code: "no-heavier-when-soaked", path: ["soakedKg"], data: weights });
  if (drainedKg > soakedKg)
    problems.push({ code: "heavier-when-drained", path: ["drainedKg"], data: weights });
  return problems;
}
