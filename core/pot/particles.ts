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

/** An independent copy, column by column. */
export function copyParticles(particles: Particles): Particles {
  const columns = Object.entries(particles).map(([name, column]) => [
    name,
    column instanceof Float64Array ? column.slice() : column,
  ]);
  return Object.fromEntries(columns) as Particles;
}

/** The cloud as others see it. */
export function cloudOf(particles: Particles, pot: { capacityMl: number; surfaceAreaCm2: number }): Cloud {
  const { surfaceMl, bodyMl, capacityFactor, ...rest } = copyParticles(particles);
  return {
    ...rest,
    capacityFactor,
    waterMl: capacityFactor.map((factor, k) => factor * pot.capacityMl - surfaceMl[k]! - bodyMl[k]!),
    surfaceDepletionMm: surfaceMl.map((waterMl) => mmFromMl({ waterMl, areaCm2: pot.surfaceAreaCm2 })),
  };
}

/** A cloud opened for the balance. */
export function particlesOf(cloud: Cloud, pot: { capacityMl: number; surfaceAreaCm2: number }): Particles {
  const { size, capacityFactor } = cloud;
  const surfaceMl = cloud.surfaceDepletionMm.map((depthMm) => mlFromMm(depthMm, pot.surfaceAreaCm2));
  const bodyMl = cloud.waterMl.map((water, k) =>
    Math.max(0, capacityFactor[k]! * pot.capacityMl - surfaceMl[k]! - water),
  );
  return {
    size,
    weightFrac: cloud.weightFrac.slice(),
    capacityFactor: capacityFactor.slice(),
    thirstFactor: cloud.thirstFactor.slice(),
    wallFactor: cloud.wallFactor.slice(),
    catchFactor: cloud.catchFactor.slice(),
    surfaceFactor: cloud.surfaceFactor?.slice() ?? new Float64Array(size).fill(1),
    tareKg: cloud.tareKg?.slice() ?? new Float64Array(size),
    surfaceMl,
    bodyMl,
    saucerMl: cloud.saucerMl.slice(),
    ...(cloud.droughtFrac === undefined ? {} : { droughtFrac: cloud.droughtFrac.slice() }),
    ...(cloud.depletionOff === undefined ? {} : { depletionOff: cloud.depletionOff.slice() }),
  };
}
