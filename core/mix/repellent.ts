import { type Portion, sumOf } from "./blend.ts";
import { shareOf } from "./shares.ts";

/** A mix behaves like its repellent stuff from this share on. Chosen by us: sand and stone cure repellency in proportion. */
const REPELLENT_FROM_SHARE = 0.5;

/** Water content of a mix below which it sheds water; null when there is too little repellent stuff in it to matter. */
export function repellentBelowFracOf(portions: readonly Portion[]): number | null {
  const shareFrac = shareOf(portions, ({ repellentBelowFrac }) => repellentBelowFrac !== undefined);
  if (shareFrac < REPELLENT_FROM_SHARE - 1e-9) return null;
  return sumOf(portions, ({ repellentBelowFrac }) => repellentBelowFrac ?? 0);
}
