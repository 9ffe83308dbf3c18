import type { PotStudy } from "../choice/pot-study.ts";
import { tripHarm } from "../choice/trouble.ts";
import type { HarmByTerm, HarmTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { AIDS, type Aid } from "./aids.ts";

/** An aid worth its trouble: what it saves, and what it is mostly for. */
export interface ChosenAid {
  readonly aid: Aid;
  readonly saves: number;
  readonly term: HarmTerm;
}

/** What an aid must save beyond its trouble before it is asked for, in trips. Chosen by us: rather leave it alone. */
const WORTH_ASKING_TRIPS = 0.25;

/**
 * Aids one after another as long as each saves more than its trouble, the most worthwhile first. Those against the same
 * harm are alternatives: nobody tilts a pot under a cover.
 */
export function chooseAids(context: PlanContext, study: PotStudy, leftOver: HarmByTerm): ChosenAid[] {
  const left = new Map(
    (Object.entries(leftOver) as [HarmTerm, Float64Array][]).map(([term, byDay]) => [term, sumUp(byDay)]),
  );
  let open = AIDS.filter((aid) => aid.isPossible(study));
  const chosen: ChosenAid[] = [];
  for (;;) {
    const best = open
      .map((aid) => ({ aid, ...savingOf(aid, left) }))
      .map((one) => ({ ...one, net: one.saves - one.aid.trips * tripHarm(context.settings) }))
      .sort((a, b) => b.net - a.net)[0];
    if (best === undefined || best.net <= WORTH_ASKING_TRIPS * tripHarm(context.settings)) return chosen;
    chosen.push({ aid: best.aid, saves: best.saves, term: best.term });
    open = open.filter((other) => !entriesOf(other).some(([term]) => term in best.aid.takesFrac));
  }
}

function savingOf(aid: Aid, left: ReadonlyMap<HarmTerm, number>): { saves: number; term: HarmTerm } {
  const parts = entriesOf(aid).map(([term, frac]) => ({ term, saves: frac * (left.get(term) ?? 0) }));
  const most = parts.reduce((a, b) => (b.saves > a.saves ? b : a));
  return { saves: parts.reduce((sum, { saves }) => sum + saves, 0), term: most.term };
}

function entriesOf({ takesFrac }: Aid): [HarmTerm, number][] {
  return Object.entries(takesFrac) as [HarmTerm, number][];
}

function sumUp(byDay: Float64Array): number {
  let sum = 0;
  for (const harm of byDay) sum += harm;
  return sum;
}
