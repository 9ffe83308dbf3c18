import type { CellResult, PotBound } from "../../core/replay/play-cell.ts";
import { POLICIES } from "../../core/replay/policy-list.ts";
import { type CellComparison, comparisons } from "../../core/replay/score/comparisons.ts";
import type { Belief } from "../../core/replay/score/content-watch.ts";
import type { Estimate } from "../../core/replay/score/estimate.ts";
import { joinedReliability, type Reliability } from "../../core/replay/score/reliability.ts";
import { differenceOf, type PolicySummary, policySummary } from "../../core/replay/score/summary.ts";
import { damageOf, HARM_TERMS } from "../../core/replay/world/harm-terms.ts";
import { CREDIT } from "../feed/credit.ts";
import { OWN_SITE } from "./own-year.ts";
import type { ReplayAsk } from "./replay-ask.ts";
import { REPLAY_PLACES } from "./replay-places.ts";
import type { Ground } from "./run-replay.ts";

/** The outcome of a replay in figures; the same ask gives the same value. */
export interface ReplayReport {
  readonly format: "leebench-replay";
  readonly version: 1;
  readonly ask: ReplayAsk;
  readonly credits: readonly string[];
  /** Where the forecasts came from: drawn with published errors, or what the feed had truly sent. */
  readonly forecasts: "drawn" | "previous-runs";
  /** Seasons that were played: one place, seed and year each. */
  readonly seasons: number;
  readonly policies: readonly PolicySummary[];
  /** Mean cost of the best that could have been done; null when it was not asked for. */
  readonly boundCost: number | null;
  /** The same by its parts. */
  readonly best: BestPossible | null;
  /** The planner against the best way of people, by place and group. */
  readonly comparisons: readonly CellComparison[];
  /** What each ablation costs beyond the planner. */
  readonly ablations: readonly { readonly id: string; readonly costs: Estimate }[];
  readonly belief: {
    readonly refill: Reliability;
    readonly rain: Reliability;
    readonly byMonth: readonly {
      readonly error: number;
      readonly withinFrac: number;
      readonly count: number;
    }[];
  } | null;
  /** Planner less planner without learning, by half month: what learning saves as the season goes. */
  readonly learningByHalfMonth: readonly number[] | null;
}

/** Means over all pots of the best that could have been done. */
export interface BestPossible {
  readonly harm: number;
  readonly damage: number;
  readonly trouble: number;
  readonly harmByTerm: readonly number[];
}

const PLANNER = "planner";
const DEAF = "planner-no-learning";

export function replayReport(
  ask: ReplayAsk,
  cells: readonly CellResult[],
  grounds: readonly Pick<Ground, "placeId" | "told">[] = [],
): ReplayReport {
  const idsOf = (kind: "people" | "ablation") =>
    POLICIES.filter((one) => one.kind === kind && ask.policyIds.includes(one.id)).map(({ id }) => id);
  const hasPlanner = ask.policyIds.includes(PLANNER);
  const bounds = cells.flatMap(({ bound }) => bound);
  return {
    format: "leebench-replay",
    version: 1,
    ask,
    credits: creditsOf(ask.placeIds),
    forecasts: grounds.some(({ told }) => told?.runs) ? "previous-runs" : "drawn",
    seasons: cells.length,
    policies: ask.policyIds.map((id) => policySummary(id, cells)),
    boundCost: bounds.length === 0 ? null : bounds.reduce((sum, { cost }) => sum + cost, 0) / bounds.length,
    best: bounds.length === 0 ? null : bestOf(bounds),
    comparisons: hasPlanner ? comparisons(cells, { plannerId: PLANNER, peopleIds: idsOf("people") }) : [],
    ablations: hasPlanner
      ? idsOf("ablation").map((id) => ({ id, costs: differenceOf(cells, { id, lessId: PLANNER }) }))
      : [],
    belief: hasPlanner ? beliefOf(cells) : null,
    learningByHalfMonth: hasPlanner && ask.policyIds.includes(DEAF) ? learningOf(cells) : null,
  };
}

function bestOf(bounds: readonly PotBound[]): BestPossible {
  const mean = (value: (one: PotBound) => number) =>
    bounds.reduce((sum, one) => sum + value(one), 0) / bounds.length;
  return {
    harm: mean(({ harm }) => harm),
    damage: mean(({ harmByTerm }) => Math.min(1, damageOf(harmByTerm))),
    trouble: mean(({ trouble }) => trouble),
    harmByTerm: HARM_TERMS.map((_, term) => mean(({ harmByTerm }) => harmByTerm[term]!)),
  };
}

function creditsOf(placeIds: readonly string[]): string[] {
  const credits = REPLAY_PLACES.filter(({ id }) => placeIds.includes(id)).map(({ credit }) => `${credit}.`);
  return [...new Set([...credits, ...(placeIds.includes(OWN_SITE) ? [CREDIT.primary] : [])])];
}

function beliefOf(cells: readonly CellResult[]): ReplayReport["belief"] {
  const beliefs = cells.flatMap(({ belief }): Belief[] => (belief === null ? [] : [belief]));
  const sum = (name: "contentErrorSum" | "withinCount" | "count", month: number) =>
    beliefs.reduce((total, belief) => total + belief[name][month]!, 0);
  return {
    refill: joinedReliability(beliefs.map(({ refill }) => refill)),
    rain: joinedReliability(beliefs.map(({ rain }) => rain)),
    byMonth: Array.from({ length: 12 }, (_, month) => {
      const count = sum("count", month);
      const of = (name: "contentErrorSum" | "withinCount") => (count === 0 ? 0 : sum(name, month) / count);
      return { error: of("contentErrorSum"), withinFrac: of("withinCount"), count };
    }),
  };
}

function learningOf(cells: readonly CellResult[]): number[] {
  const meanBy = (id: string) => {
    const pots = cells
      .flatMap(({ policies }) => policies.filter((one) => one.id === id))
      .flatMap(({ pots }) => pots);
    return Array.from(
      { length: 24 },
      (_, half) => pots.reduce((sum, pot) => sum + pot.costByHalfMonth[half]!, 0) / pots.length,
    );
  };
  const [planner, deaf] = [meanBy(PLANNER), meanBy(DEAF)];
  return deaf.map((cost, half) => cost - planner[half]!);
}
