import type { Tank } from "../balance/tank.ts";
import { FACTOR_COLUMNS, type Particles } from "../particles.ts";
import { weightedCovariance, weightedMean } from "./weighted.ts";

/** Beyond these the mix or the plant is not what was entered, whatever one measurement says. Chosen by us. */
const CAPACITY_BOUNDS = [0.4, 2] as const;
const FACTOR_BOUNDS = [0.2, 5] as const;

/** A figure that the grower measured, and what each particle would have shown. */
export interface Measured {
  readonly seen: number;
  readonly sd: number;
  readonly foretold: Float64Array;
}

/** How far a measurement lies from what the cloud foretold, in standard deviations of both together. */
export function surpriseSd(weightFrac: Float64Array, measured: Measured): number {
  const mean = weightedMean(measured.foretold, weightFrac);
  const variance = weightedCovariance(measured.foretold, measured.foretold, weightFrac);
  return (measured.seen - mean) / Math.sqrt(variance + measured.sd ** 2);
}

/**
 * Moves the cloud to what was measured: each quantity in proportion to how it goes together with the foretold figure,
 * mean and spread apart, without chance. The cloud is renewed rather than thinned out, so that fifty particles last.
 * [WHITAKER2002 eq. 10-13, for one measurement]
 *
 * Factors are moved as logarithms, stores as shares of what can go missing; both stay within their bounds.
 */
export function assimilate(particles: Particles, tank: Tank, measured: Measured): void {
  const { weightFrac, size } = particles;
  const mean = weightedMean(measured.foretold, weightFrac);
  const variance = weightedCovariance(measured.foretold, measured.foretold, weightFrac);
  if (variance <= 0) return;
  const noise = measured.sd ** 2;
  const lessening = 1 / (1 + Math.sqrt(noise / (variance + noise)));
  const moves = measured.foretold.map((value) => measured.seen - mean - lessening * (value - mean));
  const pull = (column: Float64Array) =>
    weightedCovariance(column, measured.foretold, weightFrac) / (variance + noise);

  const surfaceFrac = tank.surfaceMl.map((ml, k) => ml / tank.surfaceMostMl[k]!);
  const bodyFrac = tank.bodyMl.map((ml, k) => ml / tank.bodyMostMl[k]!);
  const capacityBefore = particles.capacityFactor.slice();
  for (const name of FACTOR_COLUMNS) {
    const column = particles[name];
    const logs = column.map(Math.log);
    const gain = pull(logs);
    const [least, most] = name === "capacityFactor" ? CAPACITY_BOUNDS : FACTOR_BOUNDS;
    for (let k = 0; k < size; k++) {
      column[k] = Math.min(most, Math.max(least, Math.exp(logs[k]! + gain * moves[k]!)));
    }
  }
  const tareGain = pull(particles.tareKg);
  for (let k = 0; k < size; k++) particles.tareKg[k]! += tareGain * moves[k]!;
  moveStore(particles.surfaceMl, {
    shares: surfaceFrac,
    gain: pull(surfaceFrac),
    moves,
    most: tank.surfaceMostMl,
  });
  moveStore(particles.bodyMl, { shares: bodyFrac, gain: pull(bodyFrac), moves, most: tank.bodyMostMl });
  for (let k = 0; k < size; k++) {
    const grown = particles.capacityFactor[k]! / capacityBefore[k]!;
    particles.surfaceMl[k]! *= grown;
    particles.bodyMl[k]! *= grown;
  }
}

function moveStore(
  store: Float64Array,
  by: { shares: Float64Array; gain: number; moves: Float64Array; most: Float64Array },
): void {
  for (let k = 0; k < store.length; k++) {
    const share = by.shares[k]! + by.gain * by.moves[k]!;
    store[k] = Math.min(1, Math.max(0, share)) * by.most[k]!;
  }
}
