import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import type { Outcome } from "../problem.ts";
import { bareRetention } from "./bare-retention.ts";
import { blendOf, portionsOf } from "./blend.ts";
import type { Component } from "./component.ts";
import type { RetentionCurve } from "./curve.ts";
import { curveProblems } from "./curve-checks.ts";
import type { MixPart } from "./mix.ts";
import { problemsBelow } from "./problems-below.ts";
import type { Retention } from "./retention.ts";

/** One pot to work out: a mix of library components or a bare retention curve, one of the two. */
export interface PotWorkInput {
  readonly mix?: readonly MixPart[];
  readonly curve?: RetentionCurve;
  readonly vessel: Pick<Vessel, "shape" | "topCm" | "baseCm" | "heightCm" | "saucerCm">;
}

/** A pot and what fills it to the rim. */
export interface FilledPot extends Filling {
  readonly vessel: Vessel;
}

interface Filling {
  readonly retention: Retention;
  readonly solids?: { readonly dryDensityKgPerL: number; readonly shrinkFrac: number };
}

/** The pot as asked for, or every problem with its filling and its sizes. */
export function filledPot(
  input: PotWorkInput,
  components: ReadonlyMap<string, Component>,
): Outcome<FilledPot> {
  const filling = fillingOf(input, components);
  const vessel: Vessel = { ...input.vessel, material: "plastic" };
  const problems = [...(filling.ok ? [] : filling.problems), ...vesselProblems(vessel, ["vessel"])];
  return filling.ok && problems.length === 0
    ? { ok: true, value: { ...filling.value, vessel } }
    : { ok: false, problems };
}

function fillingOf(input: PotWorkInput, components: ReadonlyMap<string, Component>): Outcome<Filling> {
  const { mix, curve } = input;
  if (mix !== undefined && curve !== undefined)
    return { ok: false, problems: [{ code: "mix-and-curve", path: [] }] };
  if (curve !== undefined) {
    const problems = curveProblems(curve, ["curve"]);
    return problems.length > 0
      ? { ok: false, problems }
      : { ok: true, value: { retention: bareRetention(curve) } };
  }
  if (mix === undefined) return { ok: false, problems: [{ code: "mix-or-curve-missing", path: [] }] };
  const portions = portionsOf(mix, components);
  if (!portions.ok) return { ok: false, problems: problemsBelow(["mix"], portions.problems) };
  const { retention, ...solids } = blendOf(portions.value);
  return { ok: true, value: { retention, solids } };
}
