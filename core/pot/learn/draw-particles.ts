import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import { seededRandom } from "../../weather/seeded-random.ts";
import type { FACTOR_COLUMNS, Particles } from "../particles.ts";
import { normalQuantile } from "./normal-quantile.ts";

/**
 * Spreads of what a pot is, as standard deviations of the natural logarithm. Chosen by us from how far published
 * figures lie apart: daily reference evapotranspiration of a place is off by some 15 %, plant factors by a third,
 * bare evaporation by 30 to 40 %, wall loss by half; catch of rain runs from 1 to 4 times the rim over shapes.
 */
const SPREAD = { demand: 0.18, thirst: 0.45, surface: 0.42, wall: 0.55, catch: 0.25 } as const;
/** Of the mix's dry weight, and of the guess at the plant's weight. Chosen by us. */
const DRY_MASS_SPREAD = 0.1;
const PLANT_MASS_SPREAD = 0.5;
/**
 * How far off the point is from which transpiration falls. FAO-56 lets it go by 0.04 for each mm/d of demand and plants of
 * one group differ as much again; real plants also slow down by a curve and not at a corner. Chosen by us.
 */
const DEPLETION_SD = 0.1;
/** The ends of a capacity range are taken as its tenth and ninetieth percentile, 1.2816 deviations out. */
const TENTHS = 2 * 1.2816;

/** A pot before anything was learned: full, and as uncertain as the library is. */
export function drawParticles(input: {
  size: number;
  seed: number;
  inVessel: MixInVessel;
  plantMassKg: number;
}): Particles {
  const { size, seed, inVessel, plantMassKg } = input;
  const random = seededRandom(seed);
  const draw = () => spreadNormals(size, random);
  const demand = draw();
  const lognormal = (sd: number, shared = 0) => draw().map((z, k) => Math.exp(sd * z + shared * demand[k]!));
  const thirstFactor = lognormal(SPREAD.thirst, SPREAD.demand);
  const surfaceFactor = lognormal(SPREAD.surface, SPREAD.demand);
  const wallFactor = lognormal(SPREAD.wall, SPREAD.demand);
  return {
    size,
    weightFrac: new Float64Array(size).fill(1 / size),
    capacityFactor: drawCapacity(draw(), inVessel),
    thirstFactor,
    wallFactor,
    catchFactor: lognormal(SPREAD.catch),
    surfaceFactor,
    tareKg: drawTare(draw(), { inVessel, plantMassKg }),
    surfaceMl: new Float64Array(size),
    bodyMl: new Float64Array(size),
    saucerMl: new Float64Array(size),
    droughtFrac: new Float64Array(size),
    depletionOff: draw().map((z) => DEPLETION_SD * z),
  };
}

/** Standard deviations that the cloud is drawn with: logarithms for the factors, kg for the tare. */
export function drawnSpreads(of: {
  inVessel: MixInVessel;
  plantMassKg: number;
}): Record<(typeof FACTOR_COLUMNS)[number] | "tareKg", number> {
  const { low, high } = of.inVessel.ranges.capacityFactor;
  const withDemand = (sd: number) => Math.hypot(sd, SPREAD.demand);
  return {
    capacityFactor: Math.log(high / low) / TENTHS,
    thirstFactor: withDemand(SPREAD.thirst),
    surfaceFactor: withDemand(SPREAD.surface),
    wallFactor: withDemand(SPREAD.wall),
    catchFactor: SPREAD.catch,
    tareKg: tareSpreadKg(of),
  };
}

/** After repotting: what the mix and the vessel decide is drawn anew, what the plant and the place decide is kept. */
export function drawRepotted(
  before: Particles,
  input: { seed: number; inVessel: MixInVessel; plantMassKg: number; sameWall: boolean },
): Particles {
  const fresh = drawParticles({ ...input, size: before.size });
  const { weightFrac, thirstFactor, catchFactor } = before;
  const wallFactor = input.sameWall ? before.wallFactor : fresh.wallFactor;
  return {
    ...fresh,
    weightFrac: weightFrac.slice(),
    thirstFactor: thirstFactor.slice(),
    catchFactor: catchFactor.slice(),
    wallFactor: wallFactor.slice(),
  };
}

function drawCapacity(normals: Float64Array, { ranges }: MixInVessel): Float64Array {
  const { low, high } = ranges.capacityFactor;
  const middle = Math.log(low * high) / 2;
  const sd = Math.log(high / low) / TENTHS;
  return normals.map((z) => Math.exp(middle + sd * z));
}

function drawTare(normals: Float64Array, of: { inVessel: MixInVessel; plantMassKg: number }): Float64Array {
  const sdKg = tareSpreadKg(of);
  return normals.map((z) => of.plantMassKg + sdKg * z);
}

function tareSpreadKg(of: { inVessel: MixInVessel; plantMassKg: number }): number {
  const { dryDensityKgPerL, hold } = of.inVessel;
  const mixKg = (dryDensityKgPerL * hold.volumeMl) / 1000;
  return Math.hypot(DRY_MASS_SPREAD * mixKg, PLANT_MASS_SPREAD * of.plantMassKg);
}

/** Normal draws without chance in their spread: one from each of `size` equal shares, in random order. */
export function spreadNormals(size: number, random: { uniform(): number }): Float64Array {
  const normals = middlesOfShares(size).slice();
  for (let i = size - 1; i > 0; i--) {
    const j = Math.floor(random.uniform() * (i + 1));
    const kept = normals[i]!;
    normals[i] = normals[j]!;
    normals[j] = kept;
  }
  return normals;
}

/** The same for every draw of that size, so they are reckoned once. */
const MIDDLES = new Map<number, Float64Array>();

/** Middles of `size` equal shares of the normal distribution, rising. */
function middlesOfShares(size: number): Float64Array {
  const known = MIDDLES.get(size);
  if (known !== undefined) return known;
  const made = Float64Array.from({ length: size }, (_, i) => normalQuantile((i + 0.5) / size));
  MIDDLES.set(size, made);
  return made;
}
