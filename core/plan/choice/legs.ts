import type { HarmTerm } from "../harm/term.ts";
import type { CarryOption } from "./carry-options.ts";

/** One run of days spent away or at home. */
export interface Leg {
  readonly fromDay: number;
  /** Exclusive. */
  readonly toDay: number;
  readonly away: boolean;
}

/** The runs of days of a way of spending the horizon, in order. */
export function legsOf(days: readonly boolean[]): Leg[] {
  const legs: Leg[] = [];
  for (const [d, away] of days.entries()) {
    const last = legs.at(-1);
    if (last !== undefined && last.away === away) legs[legs.length - 1] = { ...last, toDay: d + 1 };
    else legs.push({ fromDay: d, toDay: d + 1, away });
  }
  return legs;
}

/** What some days of a leg save against spending them at the other place, largest first. */
export function savedByTerm(
  { costs }: Pick<CarryOption, "costs">,
  leg: Leg,
): { term: HarmTerm; harm: number }[] {
  const [spent, instead] = leg.away ? [costs.away, costs.home] : [costs.home, costs.away];
  const terms = [...new Set([...Object.keys(spent), ...Object.keys(instead)])] as HarmTerm[];
  return terms
    .map((term) => {
      let harm = 0;
      for (let d = leg.fromDay; d < leg.toDay; d++)
        harm += (instead[term]?.[d] ?? 0) - (spent[term]?.[d] ?? 0);
      return { term, harm };
    })
    .sort((a, b) => b.harm - a.harm || (a.term < b.term ? -1 : 1));
}

/** Every harm that is a good part of what a leg saves: any of them may set the hour. */
export function purposesOf(option: Pick<CarryOption, "costs">, leg: Leg): HarmTerm[] {
  const saved = savedByTerm(option, leg);
  const all = saved.reduce((sum, { harm }) => sum + Math.max(0, harm), 0);
  return saved.filter(({ harm }) => harm > GOOD_PART_FRAC * all).map(({ term }) => term);
}

/** Chosen by us. */
const GOOD_PART_FRAC = 0.04;

/**
 * What a leg is mostly for: the largest saving of the day on which it begins, since that day sets the hour; the largest of
 * the whole leg where its first day saves little.
 */
export function purposeOf(option: Pick<CarryOption, "costs">, leg: Leg): HarmTerm {
  const first = savedByTerm(option, { ...leg, toDay: leg.fromDay + 1 })[0]!;
  const whole = savedByTerm(option, leg)[0]!;
  return first.harm > FIRST_DAY_SHARE * whole.harm ? first.term : whole.term;
}

/** Share of the leg's saving below which the first day is not what it is for. Chosen by us. */
const FIRST_DAY_SHARE = 0.25;
