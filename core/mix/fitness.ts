import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import { mixDepthCm } from "../pot/vessel-shape.ts";
import type { Outcome } from "../problem.ts";
import { blendOf, portionsOf } from "./blend.ts";
import type { Component } from "./component.ts";
import type { Finding, FitnessRule, Judged, Move, PartChange, Purpose } from "./finding.ts";
import { SHARE_RULES } from "./fitness-share-rules.ts";
import { WATER_RULES } from "./fitness-water-rules.ts";
import type { MixPart } from "./mix.ts";
import { workedInVessel } from "./mix-in-vessel.ts";
import { problemsBelow } from "./problems-below.ts";

export interface FitnessInput {
  readonly parts: readonly MixPart[];
  readonly components: ReadonlyMap<string, Component>;
  readonly purpose: Purpose;
  /** Left out, water and air are judged as at 1 kPa in the laboratory. */
  readonly vessel?: Vessel;
}

/** What growers would change in a mix for its purpose, each with the smallest change in parts that cures it. */
export function fitness(input: FitnessInput): Outcome<Finding[]> {
  const portions = portionsOf(input.parts, input.components);
  const problems = [
    ...(portions.ok ? [] : problemsBelow(["parts"], portions.problems)),
    ...(input.vessel === undefined ? [] : vesselProblems(input.vessel, ["vessel"])),
  ];
  if (problems.length > 0) return { ok: false, problems };
  const mix = judged(input, input.parts);
  const value = [...SHARE_RULES, ...WATER_RULES].flatMap((rule) => findingOf({ rule, mix, input }));
  return { ok: true, value };
}

function findingOf(at: { rule: FitnessRule; mix: Judged; input: FitnessInput }): Finding[] {
  const { rule, mix, input } = at;
  const numbers = rule.broken(mix);
  if (numbers === null) return [];
  const { code, status, source } = rule;
  return [{ code, numbers, status, source, cure: cureOf({ rule, moves: rule.moves(mix), input }) }];
}

/** Steps that are tried before giving up; with the step below some four times the whole mix is added. */
const MOST_STEPS = 160;

/** Steps in which growers measure, parts. */
const STEPS = [0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

/** The first change found when every move is tried with one step, then with two, and so on. */
function cureOf(at: { rule: FitnessRule; moves: readonly Move[]; input: FitnessInput }): PartChange | null {
  const { rule, moves, input } = at;
  const total = input.parts.reduce((sum, { parts }) => sum + parts, 0);
  const step = STEPS.find((size) => size >= total / 40) ?? total / 40;
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    for (const move of moves) {
      const change = changeBy(input.parts, move, steps * step);
      const changed = change === null ? [] : applied(input.parts, change);
      if (change !== null && changed.length > 0 && rule.cured(judged(input, changed))) return change;
    }
  }
  return null;
}

function changeBy(parts: readonly MixPart[], move: Move, byParts: number): PartChange | null {
  const fromParts = partsOf(parts, move.component);
  const toParts = move.way === "more" ? fromParts + byParts : fromParts - byParts;
  return toParts < 0 ? null : { component: move.component, fromParts, toParts };
}

/** The recipe after a change; a component listed twice is gathered. */
export function applied(parts: readonly MixPart[], change: PartChange): MixPart[] {
  const others = parts.filter(({ component }) => component !== change.component);
  if (change.toParts === 0) return others;
  const changed = { component: change.component, parts: change.toParts };
  const index = parts.findIndex(({ component }) => component === change.component);
  return index < 0 ? [...others, changed] : [...others.slice(0, index), changed, ...others.slice(index)];
}

function partsOf(parts: readonly MixPart[], component: string): number {
  return parts.reduce((sum, part) => (part.component === component ? sum + part.parts : sum), 0);
}

function judged(input: FitnessInput, parts: readonly MixPart[]): Judged {
  const portions = portionsOf(parts, input.components);
  if (!portions.ok) throw new RangeError(`changed recipe is broken: ${JSON.stringify(portions.problems)}`);
  const worked = { ...blendOf(portions.value), libraryOnly: true };
  const { vessel, purpose } = input;
  if (vessel === undefined) return { worked, hold: null, depthCm: null, purpose };
  return { worked, hold: workedInVessel(worked, vessel).hold, depthCm: mixDepthCm(vessel), purpose };
}
