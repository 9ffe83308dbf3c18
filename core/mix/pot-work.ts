import { wetLayerCm } from "../pot/hold-layer.ts";
import { waterMlAtRest } from "../pot/hold-water.ts";
import { volumeMlBetween } from "../pot/vessel-shape.ts";
import type { Outcome } from "../problem.ts";
import type { WorkStep } from "../weather/work/work-step.ts";
import type { Component } from "./component.ts";
import { type FilledPot, filledPot, type PotWorkInput } from "./filled-pot.ts";
import { componentsById } from "./library.ts";
import { potSteps } from "./pot-steps.ts";

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
  const filled = filledPot(input, components);
  return filled.ok ? { ok: true, value: workOf(filled.value) } : filled;
}

/** The same with every step of the way, for whoever wants to check it by hand. */
export function potWorkWithSteps(
  input: PotWorkInput,
  components: ReadonlyMap<string, Component> = componentsById(),
): Outcome<PotWork & { readonly steps: readonly WorkStep[] }> {
  const filled = filledPot(input, components);
  if (!filled.ok) return filled;
  const work = workOf(filled.value);
  return { ok: true, value: { ...work, steps: potSteps(filled.value, work) } };
}

function workOf({ retention, solids, vessel }: FilledPot): PotWork {
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
