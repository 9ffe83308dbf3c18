import type { Cloud } from "./cloud.ts";
import { mlFromMm, mmFromMl } from "./water-units.ts";

/**
 * A cloud while it is being replayed: the same columns as `Cloud`, but open to change, with the state as the balance
 * keeps it, so that a replay cut in two ends in the same bytes.
 */
export interface Particles {
  readonly size: number;
  readonly weightFrac: Float64Array;
  readonly capacityFactor: Float64Array;
  readonly thirstFactor: Float64Array;
  readonly wallFactor: Float64Array;
  readonly catchFactor: Float64Array;
  readonly surfaceFactor: Float64Array;
  readonly tareKg: Float64Array;
  /** Missing from the surface layer, missing from the body, standing in the saucer. */
  readonly surfaceMl: Float64Array;
  readonly bodyMl: Float64Array;
  readonly saucerMl: Float64Array;
  /** Drought without a break so far, in the time that the plant stands; nought when left out. */
  readonly droughtFrac?: Float64Array;
  /** How far off the point is from which transpiration falls, share of usable water gone; nought when left out. */
  readonly depletionOff?: Float64Array;
}

/** Columns that say what a pot is, as against how wet it is. */
export const FACTOR_COLUMNS = [
  "capacityFactor",
  "thirstFactor",
  "wallFactor",
  "catchFactor",
  "surfaceFactor",
] as const satisfies readonly (keyof Particles)[];

/** An independent copy, column by column. Written out, so that all particles are of one shape and quick to read. */
export function copyParticles(particles: Particles): Particles {
  const { droughtFrac, depletionOff } = particles;
  return {
    size: particles.size,
    weightFrac: particles.weightFrac.slice(),
    capacityFactor: particles.capacityFactor.slice(),
    thirstFactor: particles.thirstFactor.slice(),
    wallFactor: particles.wallFactor.slice(),
    catchFactor: particles.catchFactor.slice(),
    surfaceFactor: particles.surfaceFactor.slice(),
    tareKg: particles.tareKg.slice(),
    surfaceMl: particles.surfaceMl.slice(),
    bodyMl: particles.bodyMl.slice(),
    saucerMl: particles.saucerMl.slice(),
    ...(droughtFrac === undefined ? {} : { droughtFrac: droughtFrac.slice() }),
    ...(depletionOff === undefined ? {} : { depletionOff: depletionOff.slice() }),
  };
}

/** The cloud as others see it. It takes the columns over: who goes on with the particles gives it a copy. */
export function cloudOf(particles: Particles, pot: { capacityMl: number; surfaceAreaCm2: number }): Cloud {
  const { surfaceMl, bodyMl, ...rest } = particles;
  const { capacityFactor } = particles;
  return {
    ...rest,
    waterMl: capacityFactor.map((factor, k) => factor * pot.capacityMl - surfaceMl[k]! - bodyMl[k]!),
    surfaceDepletionMm: surfaceMl.map((waterMl) => mmFromMl({ waterMl, areaCm2: pot.surfaceAreaCm2 })),
  };
}

/** What running the balance changes in particles. */
export type Stores = Pick<Particles, "surfaceMl" | "bodyMl" | "saucerMl">;

export function storesFor(size: number): Stores {
  const column = () => new Float64Array(size);
  return { surfaceMl: column(), bodyMl: column(), saucerMl: column() };
}

/** A cloud opened for the balance: only its stores are its own, to be run on; the rest is the cloud's. */
export function particlesOf(
  cloud: Cloud,
  pot: { capacityMl: number; surfaceAreaCm2: number },
  stores: Stores,
): Particles {
  const { size, capacityFactor, droughtFrac, depletionOff } = cloud;
  for (let k = 0; k < size; k++) {
    const surfaceMl = mlFromMm(cloud.surfaceDepletionMm[k]!, pot.surfaceAreaCm2);
    stores.surfaceMl[k] = surfaceMl;
    stores.bodyMl[k] = Math.max(0, capacityFactor[k]! * pot.capacityMl - surfaceMl - cloud.waterMl[k]!);
    stores.saucerMl[k] = cloud.saucerMl[k]!;
  }
  return {
    size,
    weightFrac: cloud.weightFrac,
    capacityFactor,
    thirstFactor: cloud.thirstFactor,
    wallFactor: cloud.wallFactor,
    catchFactor: cloud.catchFactor,
    surfaceFactor: cloud.surfaceFactor ?? new Float64Array(size).fill(1),
    tareKg: cloud.tareKg ?? new Float64Array(size),
    surfaceMl: stores.surfaceMl,
    bodyMl: stores.bodyMl,
    saucerMl: stores.saucerMl,
    ...(droughtFrac === undefined ? {} : { droughtFrac }),
    ...(depletionOff === undefined ? {} : { depletionOff }),
  };
}
