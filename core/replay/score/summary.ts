import type { CellResult, PotBound } from "../play-cell.ts";
import type { PotSeason } from "../season/season-result.ts";
import { damageOf, HARM_TERMS } from "../world/harm-terms.ts";
import { type Estimate, estimateOf, meansByKey } from "./estimate.ts";

/** One pot's season under one policy, with the bound beside it. */
export interface Played {
  readonly placeId: string;
  readonly seed: number;
  readonly year: number;
  readonly policyId: string;
  readonly pot: PotSeason;
  readonly bound: PotBound | null;
}

/** Means over all pots and seasons of one policy; intervals count each seed as one value. */
export interface PolicySummary {
  readonly id: string;
  readonly potSeasons: number;
  /** Harm and trouble. */
  readonly cost: Estimate;
  readonly harm: number;
  /** Harm beyond that of the best possible, which nobody could have spared the plants; null without a bound. */
  readonly harmOverBest: Estimate | null;
  /** Without gloom, which only wears. */
  readonly damage: number;
  readonly trouble: number;
  readonly harmByTerm: readonly number[];
  readonly lostFrac: number;
  readonly pours: number;
  readonly litres: number;
  readonly carries: number;
  readonly trips: number;
  readonly carriedKg: number;
  readonly morningsWithWork: number;
  /** Cost beyond the best possible, and mean cost over mean best; null without a bound. */
  readonly regret: Estimate | null;
  readonly overBound: number | null;
}

/** Every pot season of the cells in one list. */
export function playedOf(cells: readonly CellResult[]): Played[] {
  return cells.flatMap(({ placeId, seed, year, policies, bound }) =>
    policies.flatMap(({ id, pots }) =>
      pots.map((pot) => ({
        placeId,
        seed,
        year,
        policyId: id,
        pot,
        bound: bound.find(({ potId }) => potId === pot.potId) ?? null,
      })),
    ),
  );
}

export function policySummary(id: string, cells: readonly CellResult[]): PolicySummary {
  const played = playedOf(cells).filter(({ policyId }) => policyId === id);
  const mean = (value: (one: Played) => number) =>
    played.reduce((sum, one) => sum + value(one), 0) / played.length;
  const bySeed = (value: (one: Played) => number) =>
    estimateOf(meansByKey(played, { key: ({ seed }) => seed, value }));
  const hasBound = played.length > 0 && played.every(({ bound }) => bound !== null);
  const mornings = cells.flatMap(({ policies }) => policies.filter((one) => one.id === id));
  return {
    id,
    potSeasons: played.length,
    cost: bySeed(costIn),
    harm: mean(({ pot }) => pot.harm),
    harmOverBest: hasBound ? bySeed(({ pot, bound }) => pot.harm - bound!.harm) : null,
    damage: mean(({ pot }) => Math.min(1, damageOf(pot.harmByTerm))),
    trouble: mean(({ pot }) => pot.trouble),
    harmByTerm: HARM_TERMS.map((_, term) => mean(({ pot }) => pot.harmByTerm[term]!)),
    lostFrac: mean(({ pot }) => (pot.lost ? 1 : 0)),
    pours: mean(({ pot }) => pot.pours),
    litres: mean(({ pot }) => pot.litres),
    carries: mean(({ pot }) => pot.carries),
    trips: mean(({ pot }) => pot.trips),
    carriedKg: mean(({ pot }) => pot.carriedKg),
    morningsWithWork: mornings.reduce((sum, one) => sum + one.morningsWithWork, 0) / mornings.length,
    regret: hasBound ? bySeed((one) => costIn(one) - one.bound!.cost) : null,
    overBound: hasBound ? mean(costIn) / mean(({ bound }) => bound!.cost) : null,
  };
}

/** Another policy's cost less that of the first, paired by seed. */
export function differenceOf(cells: readonly CellResult[], of: { id: string; lessId: string }): Estimate {
  const cost = costBySeason(playedOf(cells));
  const pairs = [...cost].flatMap(([, byPolicy]) => {
    const [one, other] = [byPolicy.get(of.id), byPolicy.get(of.lessId)];
    return one === undefined || other === undefined ? [] : [{ seed: one.seed, value: one.cost - other.cost }];
  });
  return estimateOf(meansByKey(pairs, { key: ({ seed }) => seed, value: ({ value }) => value }));
}

function costBySeason(played: readonly Played[]): Map<string, Map<string, { seed: number; cost: number }>> {
  const bySeason = new Map<string, Map<string, { seed: number; cost: number }>>();
  for (const one of played) {
    const key = `${one.placeId} ${one.seed} ${one.year} ${one.pot.potId}`;
    const byPolicy = bySeason.get(key) ?? new Map<string, { seed: number; cost: number }>();
    byPolicy.set(one.policyId, { seed: one.seed, cost: costIn(one) });
    bySeason.set(key, byPolicy);
  }
  return bySeason;
}

function costIn({ pot }: Played): number {
  return pot.harm + pot.trouble;
}

/** Mean of harm and trouble. */
export function meanCost(played: readonly Played[]): number {
  return played.reduce((sum, one) => sum + costIn(one), 0) / played.length;
}
