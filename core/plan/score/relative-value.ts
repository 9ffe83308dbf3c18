import type { Told } from "./brier.ts";

/** How often a yes or no was told, and came. */
export interface YesNoTable {
  readonly hits: number;
  readonly falseAlarms: number;
  readonly misses: number;
  readonly rightlyQuiet: number;
}

/**
 * What acting on a forecast saves, as a share of what perfect foresight would save, against the better of always and
 * never acting. [RICHARDSON2000]
 * @param costFrac  cost of acting over the loss that acting averts, 0 to 1
 * @returns 1 for perfect, 0 for no better than not asking, below 0 for worse; NaN when it never or always came
 */
export function relativeValue(table: YesNoTable, costFrac: number): number {
  const { hits, falseAlarms, misses, rightlyQuiet } = table;
  const count = hits + falseAlarms + misses + rightlyQuiet;
  const cameFrac = (hits + misses) / count;
  const unasked = Math.min(costFrac, cameFrac);
  const perfect = cameFrac * costFrac;
  const asked = ((hits + falseAlarms) * costFrac + misses) / count;
  return (unasked - asked) / (unasked - perfect);
}

/** The table of acting whenever the share told exceeds a limit. */
export function tableAbove(all: readonly Told[], limitFrac: number): YesNoTable {
  const table = { hits: 0, falseAlarms: 0, misses: 0, rightlyQuiet: 0 };
  for (const { toldFrac, cameTrue } of all) {
    if (toldFrac > limitFrac) table[cameTrue ? "hits" : "falseAlarms"]++;
    else table[cameTrue ? "misses" : "rightlyQuiet"]++;
  }
  return table;
}
