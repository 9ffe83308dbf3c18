import type { Confidence } from "../deed.ts";
import { roundTo } from "./round-to.ts";

/** A share of the cloud in the words whose meaning is fixed; a limit belongs to the stronger word. */
export function confidenceOf(shareFrac: number): Confidence {
  const share = roundTo(Math.min(1, Math.max(0, shareFrac)), 0.01);
  return { word: wordFor(share), shareFrac: share };
}

function wordFor(share: number): Confidence["word"] {
  if (share >= 0.95) return "near-certain";
  if (share >= 0.8) return "very-likely";
  if (share >= 0.6) return "likely";
  return share >= 0.4 ? "about-even" : "unlikely";
}
