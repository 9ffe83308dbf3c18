import { roundTo } from "./round-to.ts";

/** Upper end of a range of amounts and the step to which a grower pours or measures in it. Chosen by us: about a twentieth. */
const POUR_STEPS: readonly (readonly [upToMl: number, stepMl: number])[] = [
  [100, 10],
  [300, 25],
  [1000, 50],
  [3000, 100],
  [10_000, 500],
  [100_000, 1000],
  [1_000_000, 10_000],
  [Number.POSITIVE_INFINITY, 100_000],
];

/** Millilitres as a grower pours them; never nothing when something is due. */
export function pourAmountMl(waterMl: number): number {
  const [, stepMl] = POUR_STEPS.find(([upToMl]) => waterMl <= upToMl)!;
  return Math.max(stepMl, roundTo(waterMl, stepMl));
}
