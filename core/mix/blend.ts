import type { Outcome, Problem } from "../problem.ts";
import type { Component } from "./component.ts";
import { grainMmOf } from "./grain-size.ts";
import type { MixPart } from "./mix.ts";
import { nearestNames } from "./nearest-names.ts";
import { shrinkFrac } from "./packing.ts";
import type { Retention } from "./retention.ts";
import { unusableFracOf, unusableFracOfGrains } from "./unusable-water.ts";

/** One component of a mix and its share of the loose volume; the shares sum to 1. */
export interface Portion {
  readonly component: Component;
  readonly shareFrac: number;
}

/** A mix worked out from its parts. */
export interface Blend {
  readonly portions: readonly Portion[];
  readonly shrinkFrac: number;
  readonly dryDensityKgPerL: number;
  readonly retention: Retention;
}

/** Nobody counts more parts; beyond, sums could overflow. Chosen by us. */
const MOST_PARTS = 1e6;

/** The parts of a recipe as shares of known components, each once, or everything that is wrong with them. */
export function portionsOf(
  parts: readonly MixPart[],
  components: ReadonlyMap<string, Component>,
): Outcome<Portion[]> {
  const problems = parts.flatMap((part, index) => partProblems({ part, index, components }));
  if (parts.length === 0) problems.push({ code: "no-parts", path: [] });
  if (problems.length > 0) return { ok: false, problems };
  const total = parts.reduce((sum, part) => sum + part.parts, 0);
  const gathered = new Map<string, number>();
  for (const { component, parts: count } of parts) {
    gathered.set(component, (gathered.get(component) ?? 0) + count);
  }
  const value = [...gathered].map(([id, count]) => ({
    component: components.get(id)!,
    shareFrac: count / total,
  }));
  return { ok: true, value };
}

/**
 * Density, pores and retention of a mix: volume averages at equal suction over the shrunk volume. Shrinkage takes
 * away air only: the solids and the water they hold are the same in less room.
 */
export function blendOf(portions: readonly Portion[]): Blend {
  const shrink = shrinkFrac(
    portions.map(({ component, shareFrac }) => ({
      shareFrac,
      grainMm: grainMmOf(component),
      trickles: component.crumbly !== true,
    })),
  );
  return { portions, ...blendAt(portions, shrink) };
}

/** The same with the shrinkage given. */
export function blendAt(portions: readonly Portion[], shrink: number): Omit<Blend, "portions"> {
  const packed = (figure: (component: Component) => number) => sumOf(portions, figure) / (1 - shrink);
  const totalPorosityFrac = 1 - packed((component) => 1 - component.totalPorosityFrac.mid);
  const fillable =
    sumOf(portions, (component) => component.curve.saturatedFrac) /
    sumOf(portions, (component) => component.totalPorosityFrac.mid);
  return {
    shrinkFrac: shrink,
    dryDensityKgPerL: packed((component) => component.dryDensityKgPerL.mid),
    retention: {
      terms: portions.map(({ component, shareFrac }) => ({
        shareFrac: shareFrac / (1 - shrink),
        curve: component.curve,
      })),
      totalPorosityFrac,
      saturatedFrac: totalPorosityFrac * fillable,
      unusableFrac: Math.min(packed(unusableFracOfComponent), totalPorosityFrac * fillable),
    },
  };
}

/** Volume average over the portions. */
export function sumOf(portions: readonly Portion[], figure: (component: Component) => number): number {
  return portions.reduce((sum, { component, shareFrac }) => sum + shareFrac * figure(component), 0);
}

function unusableFracOfComponent(component: Component): number {
  return component.role === "draining"
    ? unusableFracOfGrains(component.curve)
    : unusableFracOf(component.curve);
}

function partProblems(at: {
  part: MixPart;
  index: number;
  components: ReadonlyMap<string, Component>;
}): Problem[] {
  const { part, index, components } = at;
  const problems: Problem[] = [];
  if (!components.has(part.component)) {
    const nearest = nearestNames(String(part.component), components.keys());
    const data = { given: part.component, nearest };
    problems.push({ code: "unknown-component", path: [index, "component"], data });
  }
  if (!(Number.isFinite(part.parts) && part.parts > 0)) {
    problems.push({ code: "not-above-zero", path: [index, "parts"], data: { given: part.parts } });
  } else if (part.parts > MOST_PARTS) {
    const data = { given: part.parts, most: MOST_PARTS };
    problems.push({ code: "too-large", path: [index, "parts"], data });
  }
  return problems;
}
