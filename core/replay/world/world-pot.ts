import { canopyAreaCm2 } from "../../plant/canopy.ts";
import { plantMassKg } from "../../plant/plant-mass.ts";
import { moistureProfile } from "../../pot/profile.ts";
import { areaCm2At, mixDepthCm } from "../../pot/vessel-shape.ts";
import { mlFromMm } from "../../pot/water-units.ts";
import { drawHidden, type Hidden } from "./hidden.ts";
import type { KnownPot } from "./known-pot.ts";

/**
 * One pot of the world: two layers of mix with laws of their own. It is meant to differ from the planner's tank where
 * real pots might: water drains over hours, some of it runs past dry mix, surface and plant slow down by other
 * curves, roots draw on both layers and make up for a dry one.
 */
export interface WorldPot {
  readonly known: KnownPot;
  readonly hidden: Hidden;
  /** Drained content of either layer, and the most that either holds for a while, mL. */
  readonly upperFullMl: number;
  readonly lowerFullMl: number;
  readonly upperSoakedMl: number;
  readonly lowerSoakedMl: number;
  readonly upperUnusableMl: number;
  readonly lowerUnusableMl: number;
  readonly capacityMl: number;
  readonly usableMl: number;
  readonly unusableMl: number;
  readonly catchMlPerMm: number;
  readonly surfaceMlPerMm: number;
  /** Depletion of the upper layer up to which it dries at the demand's pace, and at which it dries no more, mL. */
  readonly readilyMl: number;
  readonly evaporableMl: number;
  readonly thirstMlPerMm: number;
  /** Usable share at which uptake is half of the demand. */
  readonly halfUptakeFrac: number;
  readonly wallMlPerMm: number;
  /** Content to which air dries the whole pot, mL. */
  readonly airDryMl: number;
  /** Content of the lower layer above which the base lacks air; Infinity when it never does at rest. */
  readonly wetAboveMl: number;
  readonly exchangeMlPerH: number;
  readonly dryMassKg: number;
  readonly depthCm: number;
}

/** Wet bare mix against reference [FAO56 ch. 7]; canopy's shade; wall; catch by the crown: the planner's middle values. */
const WET_SURFACE = 1.1;
const CANOPY_SHADE = 0.6;
const WALL = 0.5;
const CATCH_PER_CANOPY = 0.25;
const CATCH_MOST = 2;
/** Of the water that can leave the upper layer into the air: share that leaves at the demand's pace. [FAO56 table 19: a third to a half] */
const READILY_FRAC = 0.35;
/** Air takes half of what roots cannot. [FAO56 eq. 73] */
const AIR_TAKES_FRAC = 0.5;
/** Share of its volume to which mix dries in open air. Chosen by us within 0.02 to 0.05. */
const AIR_DRY_FRAC = 0.03;

export function worldPot(known: KnownPot, seed: number): WorldPot {
  const { hold } = known.inVessel;
  const plantKg = plantMassKg(known.pot, known.values);
  const hidden = drawHidden({ seed, inVessel: known.inVessel, plantMassKg: plantKg });
  const capacityMl = hold.capacityMl * hidden.capacityFactor;
  const unusableMl = hold.unusableMl * hidden.capacityFactor;
  const share = upperShareOfWater(known, hidden.upperFrac);
  const upperFullMl = share * capacityMl;
  const lowerFullMl = capacityMl - upperFullMl;
  const upperUnusableMl = hidden.upperFrac * unusableMl;
  const soakedMl = Math.max(0, hold.soakedMassKg - hold.drainedMassKg) * 1000;
  const evaporableMl = upperFullMl - AIR_TAKES_FRAC * Math.min(upperUnusableMl, upperFullMl);
  return {
    known,
    hidden,
    upperFullMl,
    lowerFullMl,
    upperSoakedMl: upperFullMl + hidden.upperFrac * soakedMl,
    lowerSoakedMl: lowerFullMl + (1 - hidden.upperFrac) * soakedMl,
    upperUnusableMl,
    lowerUnusableMl: unusableMl - upperUnusableMl,
    capacityMl,
    unusableMl,
    usableMl: capacityMl - unusableMl,
    ...demands(known, hidden),
    readilyMl: READILY_FRAC * evaporableMl,
    evaporableMl,
    airDryMl: Math.min(unusableMl, AIR_DRY_FRAC * hold.volumeMl * hidden.capacityFactor),
    halfUptakeFrac: (1 - known.values.depletionFrac) / 2,
    wetAboveMl: wetAboveShare(known, hidden) * lowerFullMl,
    exchangeMlPerH: hidden.exchangePerH * capacityMl,
    dryMassKg: hold.dryMassKg + hidden.tareKg,
    depthCm: mixDepthCm(known.vessel),
  };
}

function wetAboveShare({ wetAboveFrac }: KnownPot, { airyLossFactor }: Hidden): number {
  return wetAboveFrac === Number.POSITIVE_INFINITY ? wetAboveFrac : 1 - (1 - wetAboveFrac) * airyLossFactor;
}

function demands(known: KnownPot, hidden: Hidden) {
  const { hold } = known.inVessel;
  const canopyCm2 = canopyAreaCm2(known.pot);
  const shade = 1 - CANOPY_SHADE * Math.min(1, canopyCm2 / hold.surfaceAreaCm2);
  const wider = Math.max(0, canopyCm2 / hold.rimAreaCm2 - 1);
  const porous = known.vessel.material === "unglazed" || known.vessel.material === "fabric";
  const caught = Math.min(CATCH_MOST, 1 + CATCH_PER_CANOPY * wider) * hidden.catchFactor;
  return {
    catchMlPerMm: caught * mlFromMm(1, hold.rimAreaCm2),
    surfaceMlPerMm: WET_SURFACE * shade * hidden.surfaceFactor * mlFromMm(1, hold.surfaceAreaCm2),
    thirstMlPerMm: hidden.thirstFactor * mlFromMm(1, canopyCm2),
    wallMlPerMm: porous ? WALL * hidden.wallFactor * mlFromMm(1, hold.wallAreaCm2) : 0,
  };
}

/** Share of a drained pot's water that lies in its upper layer: the base is wetter. */
function upperShareOfWater({ inVessel, vessel }: KnownPot, upperFrac: number): number {
  const { heightCm, waterFrac } = moistureProfile({
    retention: inVessel.retention,
    vessel,
    waterMl: inVessel.hold.capacityMl,
  });
  const cutCm = mixDepthCm(vessel) * (1 - upperFrac);
  let upper = 0;
  let whole = 0;
  for (const [i, height] of heightCm.entries()) {
    const water = waterFrac[i]! * areaCm2At(vessel, height);
    whole += water;
    if (height > cutCm) upper += water;
  }
  return upper / whole;
}
