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

/** Terms that wear a plant without ever killing it; the others add up to its loss. */
const WEARING = [TERM.gloom, TERM.away];

/** All terms of a tally; what damages counts up to 1, the plant lost, and no further. */
export function harmSum(harm: ArrayLike<number>): number {
  return Math.min(1, damageOf(harm)) + wearOf(harm);
}

/** What damages: 1 and more is a plant lost. */
export function damageOf(harm: ArrayLike<number>): number {
  let sum = 0;
  for (let term = 0; term < HARM_TERMS.length; term++) sum += harm[term]!;
  return sum - wearOf(harm);
}

/** Takes damage back to what it was: once a plant is lost its place only wears. */
export function onlyWear(harm: Float64Array, before: Float64Array): void {
  for (let term = 0; term < HARM_TERMS.length; term++) {
    if (!WEARING.includes(term)) harm[term] = before[term]!;
  }
}

function wearOf(harm: ArrayLike<number>): number {
  let sum = 0;
  for (const term of WEARING) sum += harm[term]!;
  return sum;
}
