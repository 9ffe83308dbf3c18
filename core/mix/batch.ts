import type { WorkWindow } from "../plan/plan.ts";
import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import { mixDepthCm, volumeMlBetween } from "../pot/vessel-shape.ts";
import type { Outcome, Problem } from "../problem.ts";
import { type Start, startsFor } from "./batch-starts.ts";
import { type Blend, blendOf, type Portion, portionsOf } from "./blend.ts";
import { type CareNote, careNotes } from "./care-notes.ts";
import type { Component, Ranged } from "./component.ts";
import type { MixPart } from "./mix.ts";
import { problemsBelow } from "./problems-below.ts";

export interface BatchInput {
  readonly parts: readonly MixPart[];
  readonly components: ReadonlyMap<string, Component>;
  readonly pots: readonly { readonly count: number; readonly vessel: Vessel }[];
  /** On top for settling and spills, share of the mix; a tenth is usual. */
  readonly spareFrac?: number;
  /** Litres in a bag, by component; those left out are not counted in bags. */
  readonly bagLitres?: Readonly<Record<string, number>>;
  /** With both, says what to start when. */
  readonly windows?: readonly WorkWindow[];
  readonly nowUtcMs?: number;
}

/** What to fetch of one component. */
export interface BatchLine {
  readonly component: string;
  /** Loose, as measured in a bucket. */
  readonly litres: number;
  readonly bags: number | null;
  /** Air-dry; damp stuff weighs more. */
  readonly dryMassKg: Ranged;
}

export interface Batch {
  /** Filled into the pots, without the spare. */
  readonly potLitres: number;
  /** Mixed, with the spare. */
  readonly mixedLitres: number;
  /** Sum of the loose parts before they shrink into each other. */
  readonly looseLitres: number;
  readonly shrinkFrac: number;
  readonly lines: readonly BatchLine[];
  /** Stone for the tops of the pots, litres. */
  readonly dressingLitres: number;
  readonly dryMassKg: Ranged;
  readonly care: readonly CareNote[];
  /** Empty when no windows were given or none leaves time. */
  readonly starts: readonly Start[];
}

/** Common practice: a tenth more than the pots take. */
const USUAL_SPARE_FRAC = 0.1;

/** How much of each component to fetch for the pots, and what to start beforehand. */
export function batch(input: BatchInput): Outcome<Batch> {
  const portions = portionsOf(input.parts, input.components);
  const problems = [
    ...(portions.ok ? [] : problemsBelow(["parts"], portions.problems)),
    ...potProblems(input),
  ];
  if (!portions.ok || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: batchOf(input, blendOf(portions.value)) };
}

function batchOf(input: BatchInput, blend: Blend): Batch {
  const litresOf = (perPot: (vessel: Vessel) => number) =>
    input.pots.reduce((sum, { count, vessel }) => sum + (count * perPot(vessel)) / 1000, 0);
  const potLitres = litresOf((vessel) => volumeMlBetween(vessel, { fromCm: 0, toCm: mixDepthCm(vessel) }));
  const mixedLitres = potLitres * (1 + (input.spareFrac ?? USUAL_SPARE_FRAC));
  const looseLitres = mixedLitres / (1 - blend.shrinkFrac);
  const lines = blend.portions.map((portion) => lineOf({ portion, looseLitres, bagLitres: input.bagLitres }));
  const care = careNotes(blend.portions);
  return {
    potLitres,
    mixedLitres,
    looseLitres,
    shrinkFrac: blend.shrinkFrac,
    lines,
    dressingLitres: litresOf(dressingMl),
    dryMassKg: totalOf(lines.map(({ dryMassKg }) => dryMassKg)),
    care,
    starts: startsFor({ care, windows: input.windows ?? [], nowUtcMs: input.nowUtcMs }),
  };
}

function dressingMl(vessel: Vessel): number {
  const fromCm = mixDepthCm(vessel);
  return volumeMlBetween(vessel, { fromCm, toCm: fromCm + (vessel.topDressingCm ?? 0) });
}

function lineOf(of: {
  portion: Portion;
  looseLitres: number;
  bagLitres: BatchInput["bagLitres"];
}): BatchLine {
  const { component, shareFrac } = of.portion;
  const litres = shareFrac * of.looseLitres;
  const perBag = of.bagLitres?.[component.id];
  const { low, mid, high } = component.dryDensityKgPerL;
  return {
    component: component.id,
    litres,
    bags: perBag === undefined ? null : Math.ceil(litres / perBag - 1e-9),
    dryMassKg: { low: litres * low, mid: litres * mid, high: litres * high },
  };
}

function totalOf(ranges: readonly Ranged[]): Ranged {
  const mid = ranges.reduce((sum, range) => sum + range.mid, 0);
  const down = Math.hypot(...ranges.map((range) => range.mid - range.low));
  const up = Math.hypot(...ranges.map((range) => range.high - range.mid));
  return { low: mid - down, mid, high: mid + up };
}

function potProblems({ pots, spareFrac = 0, bagLitres = {} }: BatchInput): Problem[] {
  const problems: Problem[] = pots.flatMap(({ count, vessel }, index) => [
    ...(Number.isInteger(count) && count > 0
      ? []
      : [{ code: "not-a-count", path: ["pots", index, "count"], data: { given: count } }]),
    ...vesselProblems(vessel, ["pots", index, "vessel"]),
  ]);
  if (pots.length === 0) problems.push({ code: "no-pots", path: ["pots"] });
  if (!(Number.isFinite(spareFrac) && spareFrac >= 0)) {
    problems.push({ code: "below-zero", path: ["spareFrac"], data: { given: spareFrac } });
  }
  for (const [component, litres] of Object.entries(bagLitres)) {
    if (Number.isFinite(litres) && litres > 0) continue;
    problems.push({ code: "not-above-zero", path: ["bagLitres", component], data: { given: litres } });
  }
  return problems;
}
