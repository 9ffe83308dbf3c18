import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import { seededRandom } from "../../weather/seeded-random.ts";

/** What a pot of the world is like and nobody is told. */
export interface Hidden {
  readonly capacityFactor: number;
  readonly thirstFactor: number;
  readonly surfaceFactor: number;
  readonly wallFactor: number;
  readonly catchFactor: number;
  /** Error of the dry weight with the plant, kg. */
  readonly tareKg: number;
  /** Share of the mix in the upper layer, of the roots in it, and of a watering that runs past dry mix. */
  readonly upperFrac: number;
  readonly upperRootsFrac: number;
  readonly runsPastFrac: number;
  /** Exchange between the layers, share of capacity in an hour for a difference of 1. */
  readonly exchangePerH: number;
  /** The plant begins to rest at nights so much warmer. */
  readonly restsAtWarmerC: number;
  /** Water that must be gone from its base before that has air, over what the mix's curve says. */
  readonly airyLossFactor: number;
}

/**
 * How much wider than the planner's own cloud the world's pots are drawn. Chosen by us: a model that is tried on worlds
 * as narrow as it believes them to be would be tried on itself.
 */
const WIDER = 1.4;
/** Standard deviations of the logarithm in the planner's cloud, told again here so that the world stays as it is when
 * the cloud changes. Chosen by us. */
const SD = {
  demand: 0.13,
  thirst: 0.33,
  surface: 0.3,
  wall: 0.45,
  catch: 0.25,
  dryMass: 0.1,
  plantMass: 0.5,
} as const;
/** A range of capacity counts as tenth to ninetieth percentile. */
const TENTHS = 2 * 1.2816;

export function drawHidden(of: { seed: number; inVessel: MixInVessel; plantMassKg: number }): Hidden {
  const { inVessel } = of;
  const random = seededRandom(of.seed);
  const factor = (sd: number) => Math.exp(WIDER * sd * random.normal());
  const { low, high } = inVessel.ranges.capacityFactor;
  const capacitySd = Math.log(high / low) / TENTHS;
  const demand = factor(SD.demand);
  const mixKg = (inVessel.dryDensityKgPerL * inVessel.hold.volumeMl) / 1000;
  const between = (low: number, high: number) => low + (high - low) * random.uniform();
  return {
    capacityFactor: Math.sqrt(low * high) * factor(capacitySd),
    thirstFactor: demand * factor(SD.thirst),
    surfaceFactor: demand * factor(SD.surface),
    wallFactor: demand * factor(SD.wall),
    catchFactor: factor(SD.catch),
    tareKg:
      of.plantMassKg +
      WIDER * Math.hypot(SD.dryMass * mixKg, SD.plantMass * of.plantMassKg) * random.normal(),
    upperFrac: between(0.35, 0.55),
    upperRootsFrac: between(0.25, 0.5),
    runsPastFrac: between(0, 0.35),
    exchangePerH: between(0.005, 0.04),
    restsAtWarmerC: 1.5 * random.normal(),
    airyLossFactor: Math.exp(0.5 * random.normal()),
  };
}
