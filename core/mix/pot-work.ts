import { wetLayerCm } from "../pot/hold-layer.ts";
import { waterMlAtRest } from "../pot/hold-water.ts";
import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import { volumeMlBetween } from "../pot/vessel-shape.ts";
import type { Outcome } from "../problem.ts";
import { bareRetention } from "./bare-retention.ts";
import { blendOf, portionsOf } from "./blend.ts";
import type { Component } from "./component.ts";
import type { RetentionCurve } from "./curve.ts";
import { curveProblems } from "./curve-checks.ts";
import { componentsById } from "./library.ts";
import type { MixPart } from "./mix.ts";
import { problemsBelow } from "./problems-below.ts";
import type { Retention } from "./retention.ts";

/** One pot to work out: a mix of library components or a bare retention curve, one of the two. */
export interface PotWorkInput {
  readonly mix?: readonly MixPart[];
  readonly curve?: RetentionCurve;
  readonly vessel: Pick<Vessel, "shape" | "topCm" | "baseCm" | "heightCm" | "saucerCm">;
}

export interface PotWork {
  readonly volumeMl: number;
  readonly capacityMl: number;
  readonly capacityFrac: number;
  readonly airSpaceFrac: number;
  readonly totalPorosityFrac: number;
  readonly usableMl: number;
  readonly wetLayerCm: number;
  /** The rest for mixes only: a bare curve says nothing of solids. Mass of mix and water, without the vessel. */
  readonly dryDensityKgPerL?: number;
  readonly shrinkFrac?: number;
  readonly drainedMassKg?: number;
}

/**
 * What a pot filled to the rim holds after draining. [MILKS1989]
 *
 * Capacity is the curve at suction = height above the base, or above the water in the saucer, over the whole frustum.
 * Air space is total porosity less capacity; for a bare curve total porosity is its saturated share. Usable is
 * capacity less what is left at 1.5 MPa, with half of the water inside loose grains counted as usable. The wet layer
 * is where the pores that can drain hold under 10 % air.
 *
 * @returns the figures, or every problem with its path in the input
 */
export function potWork(
  input: PotWorkInput,
  components: ReadonlyMap<string, Component> = componentsById(),
): Outcome<PotWork> {
  const filling = fillingOf(input, components);
  const problems = [
    ...(filling.ok ? [] : filling.problems),
    ...vesselProblems({ ...input.vessel, material: "plastic" }, ["vessel"]),
  ];
  if (!filling.ok || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: workOf(filling.value, { ...input.vessel, material: "plastic" }) };
}

interface Filling {
  readonly retention: Retention;
  readonly solids?: { readonly dryDensityKgPerL: number; readonly shrinkFrac: number };
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

function workOf({ retention, solids }: Filling, vessel: Vessel): PotWork {
  const volumeMl = volumeMlBetween(vessel, { fromCm: 0, toCm: vessel.heightCm });
  const capacityMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: -(vessel.saucerCm ?? 0) });
  const capacityFrac = capacityMl / volumeMl;
  const held = {
    volumeMl,
    capacityMl,
    capacityFrac,
    airSpaceFrac: retention.totalPorosityFrac - capacityFrac,
    totalPorosityFrac: retention.totalPorosityFrac,
    usableMl: Math.max(0, capacityMl - retention.unusableFrac * volumeMl),
    wetLayerCm: wetLayerCm({ retention, vessel }),
  };
  if (solids === undefined) return held;
  const { dryDensityKgPerL, shrinkFrac } = solids;
  return {
    ...held,
    dryDensityKgPerL,
    shrinkFrac,
    drainedMassKg: (volumeMl * dryDensityKgPerL + capacityMl) / 1000,
  };
}
