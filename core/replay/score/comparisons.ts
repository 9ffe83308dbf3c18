import type { HarmTerm } from "../../plan/harm/term.ts";
import type { CellResult } from "../play-cell.ts";
import { HARM_TERMS } from "../world/harm-terms.ts";
import type { Estimate } from "./estimate.ts";
import { differenceOf, meanCost, type Played, playedOf } from "./summary.ts";

/** One place and group: the planner against the best way of people there. */
export interface CellComparison {
  readonly placeId: string;
  readonly groupId: string;
  readonly planner: number;
  readonly bound: number | null;
  readonly bestId: string;
  readonly best: number;
  /** Planner less best, paired by seed: above zero the planner loses. */
  readonly difference: Estimate;
  /** What makes most of the difference to the best way of people: where the planner is worse, or better where it is not. */
  readonly most: { readonly term: HarmTerm | "trouble"; readonly more: number };
}

/** For every place and group, the planner against whichever way of people did best there. */
export function comparisons(
  cells: readonly CellResult[],
  of: { plannerId: string; peopleIds: readonly string[] },
): CellComparison[] {
  const keys = new Map<string, Played[]>();
  for (const one of playedOf(cells)) {
    const key = `${one.placeId} ${one.pot.groupId}`;
    keys.set(key, [...(keys.get(key) ?? []), one]);
  }
  return [...keys.values()].flatMap((played) => {
    const planner = played.filter(({ policyId }) => policyId === of.plannerId);
    const others = of.peopleIds
      .map((id) => ({ id, mean: meanCost(played.filter(({ policyId }) => policyId === id)) }))
      .filter(({ mean }) => Number.isFinite(mean))
      .sort((a, b) => a.mean - b.mean);
    const [best] = others;
    if (planner.length === 0 || best === undefined) return [];
    const { placeId, pot } = planner[0]!;
    const inCell = cells
      .filter((cell) => cell.placeId === placeId)
      .map((cell) => onlyGroup(cell, pot.groupId));
    return [
      {
        placeId,
        groupId: pot.groupId,
        planner: meanCost(planner),
        bound: boundMean(planner),
        bestId: best.id,
        best: best.mean,
        difference: differenceOf(inCell, { id: of.plannerId, lessId: best.id }),
        most: mostOf(
          planner,
          played.filter(({ policyId }) => policyId === best.id),
        ),
      },
    ];
  });
}

function onlyGroup(cell: CellResult, groupId: string): CellResult {
  const policies = cell.policies.map((policy) => ({
    ...policy,
    pots: policy.pots.filter((pot) => pot.groupId === groupId),
  }));
  return { ...cell, policies };
}

/** The harm term, or the trouble, in which the planner's mean differs most the way the whole does. */
function mostOf(planner: readonly Played[], best: readonly Played[]): CellComparison["most"] {
  const mean = (of: readonly Played[], value: (one: Played) => number) =>
    of.reduce((sum, one) => sum + value(one), 0) / of.length;
  const more = (value: (one: Played) => number) => mean(planner, value) - mean(best, value);
  const parts = [
    { term: "trouble" as const, more: more(({ pot }) => pot.trouble) },
    ...HARM_TERMS.map((term, i) => ({ term, more: more(({ pot }) => pot.harmByTerm[i]!) })),
  ];
  const worse = meanCost(planner) > meanCost(best) ? 1 : -1;
  return parts.reduce((a, b) => (worse * b.more > worse * a.more ? b : a));
}

function boundMean(played: readonly Played[]): number | null {
  if (played.some(({ bound }) => bound === null)) return null;
  return played.reduce((sum, { bound }) => sum + bound!.cost, 0) / played.length;
}
