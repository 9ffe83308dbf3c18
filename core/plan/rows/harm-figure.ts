import { roundTo } from "./round-to.ts";

/** Harm as the plan tells it: to a ten-thousandth of a plant, between nothing and the whole. */
export function harmFigure(harm: number): number {
  return roundTo(Math.min(1, Math.max(0, harm)), 0.0001);
}
