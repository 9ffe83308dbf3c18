import type { RootWork } from "../journal/entry.ts";

/** What was done and to which kind of plant. */
export interface RootCase {
  readonly roots: RootWork;
  readonly leafy: boolean;
}

/**
 * Days at 20 °C and above that roots stay dry after work on them, for plants that store water. Common practice;
 * growers differ, and some water at once. Leafy plants are watered in.
 */
const DRY_DAYS: Readonly<Record<RootWork, number>> = {
  undisturbed: 1,
  teased: 4,
  pruned: 7,
  "bare-root": 9,
  "rot-surgery": 14,
  cutting: 12,
};

/** Days of bright shade out of the wind. Common practice. */
const SHADE_DAYS: Readonly<Record<RootWork, readonly [succulent: number, leafy: number]>> = {
  undisturbed: [2, 3],
  teased: [7, 10],
  pruned: [10, 18],
  "bare-root": [14, 24],
  "rot-surgery": [21, 28],
  cutting: [14, 28],
};

/** Share of the roots that the work leaves. Chosen by us. */
export const ROOTS_LEFT_FRAC: Readonly<Record<RootWork, number>> = {
  undisturbed: 1,
  teased: 0.9,
  pruned: 0.6,
  "bare-root": 0.45,
  "rot-surgery": 0.25,
  cutting: 0.1,
};

/** Days of keeping dry at 20 °C: the plant's own rule, else the house's, else common practice. */
export function dryDays(
  kind: RootCase,
  rules: readonly (Partial<Record<RootWork, number>> | undefined)[],
): number {
  for (const rule of rules) {
    const days = rule?.[kind.roots];
    if (days !== undefined) return days;
  }
  return kind.leafy ? 0 : DRY_DAYS[kind.roots];
}

export function shadeDays({ roots, leafy }: RootCase): number {
  return SHADE_DAYS[roots][leafy ? 1 : 0];
}

/** Days in which sun is given back step by step; none after a shift with the ball whole. Common practice: two weeks. */
export function easeDays({ roots }: RootCase): number {
  return roots === "undisturbed" ? 3 : 14;
}

/** Four weeks at the earliest; half of it when the ball was not disturbed. Common practice. */
export function noFeedDays({ roots }: RootCase): number {
  return roots === "undisturbed" ? 14 : 28;
}

/** First drink as a share of capacity: a sip for plants that store water, a full one for the leafy. Chosen by us. */
export function firstDrinkFrac(leafy: boolean): number {
  return leafy ? 1 : 0.3;
}
