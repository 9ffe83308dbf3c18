/** The harms that are told apart; each has its own file. */
export type HarmTerm =
  | "thirst"
  | "wet-roots"
  | "wet-wound"
  | "wet-cold"
  | "cold"
  | "heat"
  | "wind"
  | "hail"
  | "gloom"
  | "away";

/** Of those, the ones that come by way of the water in the pot. */
export type WetTerm = Extract<HarmTerm, "wet-roots" | "wet-wound" | "wet-cold">;
export type WaterTerm = WetTerm | Extract<HarmTerm, "thirst">;
export const WET_TERMS: readonly WetTerm[] = ["wet-roots", "wet-wound", "wet-cold"];

/** Expected harm by plan day, for each term that is not nothing. */
export type HarmByTerm = Partial<Record<HarmTerm, Float64Array>>;

/** Sum over the days of the terms named, or of all. */
export function sumOf(harm: HarmByTerm, terms?: readonly HarmTerm[]): number {
  let sum = 0;
  for (const [term, byDay] of Object.entries(harm) as [HarmTerm, Float64Array][]) {
    if (terms !== undefined && !terms.includes(term)) continue;
    for (const value of byDay) sum += value;
  }
  return sum;
}
