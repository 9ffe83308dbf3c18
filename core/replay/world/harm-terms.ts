import type { HarmTerm } from "../../plan/harm/term.ts";

/** The harm terms in the order of a tally's columns. */
export const HARM_TERMS = [
  "thirst",
  "wet-roots",
  "wet-wound",
  "wet-cold",
  "cold",
  "heat",
  "wind",
  "gloom",
  "away",
] as const satisfies readonly HarmTerm[];

/** Column of a term. */
export const TERM = Object.fromEntries(HARM_TERMS.map((term, i) => [term, i])) as Readonly<
  Record<(typeof HARM_TERMS)[number], number>
>;

/** Wears a plant without ever killing it; what damages adds up to its loss. */
const WEAR = TERM.gloom;
/** In the way and out of sight: a nuisance to the grower at the planner's price, and nothing to the plant. */
const NUISANCE = TERM.away;

/** What the plant suffers: what damages counts up to 1, the plant lost, and no further. */
export function harmSum(harm: ArrayLike<number>): number {
  return Math.min(1, damageOf(harm)) + harm[WEAR]!;
}

/** What damages: 1 and more is a plant lost. */
export function damageOf(harm: ArrayLike<number>): number {
  let sum = 0;
  for (let term = 0; term < HARM_TERMS.length; term++) sum += harm[term]!;
  return sum - harm[WEAR]! - harm[NUISANCE]!;
}

/** What of a tally is the grower's trouble and not the plant's harm. */
export function nuisanceOf(harm: ArrayLike<number>): number {
  return harm[NUISANCE]!;
}

/** Takes damage back to what it was: once a plant is lost its place only wears. */
export function onlyWear(harm: Float64Array, before: Float64Array): void {
  for (let term = 0; term < HARM_TERMS.length; term++) {
    if (term !== WEAR && term !== NUISANCE) harm[term] = before[term]!;
  }
}
