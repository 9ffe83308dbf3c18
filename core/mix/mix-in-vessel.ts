import { wetLayerCm } from "../pot/hold-layer.ts";
import { waterMlAtRest } from "../pot/hold-water.ts";
import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import { dressingMassKg, emptyVesselMassKg } from "../pot/vessel-mass.ts";
import { saucerMl } from "../pot/vessel-saucer.ts";
import { areaCm2At, mixDepthCm, volumeMlBetween, wallAreaCm2To } from "../pot/vessel-shape.ts";
import type { Outcome } from "../problem.ts";
import { capacityFactor } from "./capacity-factor.ts";
import type { Component, Ranged } from "./component.ts";
import type { Mix } from "./mix.ts";
import { repellentBelowFracOf } from "./repellent.ts";
import type { Retention } from "./retention.ts";
import { type WorkedMix, workedMix } from "./worked-mix.ts";

/** What a vessel filled with a mix holds. Masses are what stands on the scale without the plant. */
export interface Hold {
  /** Mix, not vessel. */
  readonly volumeMl: number;
  /** Water after draining, the saucer's depth included. */
  readonly capacityMl: number;
  readonly capacityFrac: number;
  /** Pores without water after draining, closed ones included. */
  readonly airSpaceFrac: number;
  readonly totalPorosityFrac: number;
  /** Of the capacity, what roots can take and what they cannot. */
  readonly usableMl: number;
  readonly unusableMl: number;
  /** Height of the layer at the base with under 10 % air after draining. */
  readonly wetLayerCm: number;
  readonly surfaceAreaCm2: number;
  readonly rimAreaCm2: number;
  /** Side wall against the mix. */
  readonly wallAreaCm2: number;
  readonly dryMassKg: number;
  readonly drainedMassKg: number;
  readonly soakedMassKg: number;
  /** What the saucer takes around the base. */
  readonly saucerMl: number;
}

export interface MixInVessel {
  readonly hold: Hold;
  /** Capacity at the ends of what is known, relative to `hold.capacityMl`. */
  readonly ranges: { readonly capacityFactor: Ranged };
  readonly retention: Retention;
  readonly dryDensityKgPerL: number;
  readonly shrinkFrac: number;
  /** Dry mix below this sheds water; null when it takes it up. */
  readonly repellentBelowFrac: number | null;
  /** No test by the grower stands behind it. */
  readonly libraryOnly: boolean;
}

/** What a mix holds in a vessel and how surely that is known, or every problem with either. */
export function mixInVessel(input: {
  mix: Mix;
  vessel: Vessel;
  components: ReadonlyMap<string, Component>;
}): Outcome<MixInVessel> {
  return inVesselOf(workedMix(input.mix, input.components), input.vessel);
}

/** The same where what became of the mix is known, as many vessels may hold it. */
export function inVesselOf(worked: Outcome<WorkedMix>, vessel: Vessel): Outcome<MixInVessel> {
  const problems = [...vesselProblems(vessel, ["vessel"]), ...(worked.ok ? [] : worked.problems)];
  if (!worked.ok || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: workedInVessel(worked.value, vessel) };
}

/** The same for a mix already worked out and a vessel already checked. */
export function workedInVessel(worked: WorkedMix, vessel: Vessel): MixInVessel {
  const hold = holdOf(worked, vessel);
  return {
    hold,
    ranges: { capacityFactor: capacityFactor({ worked, vessel, capacityFrac: hold.capacityFrac }) },
    retention: worked.retention,
    dryDensityKgPerL: worked.dryDensityKgPerL,
    shrinkFrac: worked.shrinkFrac,
    repellentBelowFrac: repellentBelowFracOf(worked.portions),
    libraryOnly: worked.libraryOnly,
  };
}

function holdOf(worked: WorkedMix, vessel: Vessel): Hold {
  const { retention } = worked;
  const depthCm = mixDepthCm(vessel);
  const volumeMl = volumeMlBetween(vessel, { fromCm: 0, toCm: depthCm });
  const capacityMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: -(vessel.saucerCm ?? 0) });
  const unusableMl = Math.min(capacityMl, retention.unusableFrac * volumeMl);
  const soakedMl = retention.saturatedFrac * volumeMl;
  const dryMassKg =
    (volumeMl / 1000) * worked.dryDensityKgPerL + emptyVesselMassKg(vessel) + dressingMassKg(vessel);
  return {
    volumeMl,
    capacityMl,
    capacityFrac: capacityMl / volumeMl,
    airSpaceFrac: retention.totalPorosityFrac - capacityMl / volumeMl,
    totalPorosityFrac: retention.totalPorosityFrac,
    usableMl: capacityMl - unusableMl,
    unusableMl,
    wetLayerCm: wetLayerCm({ retention, vessel }),
    surfaceAreaCm2: areaCm2At(vessel, depthCm),
    rimAreaCm2: areaCm2At(vessel, vessel.heightCm),
    wallAreaCm2: wallAreaCm2To(vessel, depthCm),
    dryMassKg,
    drainedMassKg: dryMassKg + capacityMl / 1000,
    soakedMassKg: dryMassKg + soakedMl / 1000,
    saucerMl: saucerMl(vessel),
  };
}
