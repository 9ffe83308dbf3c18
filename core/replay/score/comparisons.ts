import type { CellResult } from "../play-cell.ts";
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

function boundMean(played: readonly Played[]): number | null {
  if (played.some(({ bound }) => bound === null)) return null;
  return played.reduce((sum, { bound }) => sum + bound!.cost, 0) / played.length;
}
