import { seededRandom } from "../../weather/seeded-random.ts";
import { FACTOR_COLUMNS, type Particles } from "../particles.ts";

/** Below this share of particles that still count, the cloud is renewed. Chosen by us. */
const RENEW_BELOW = 0.5;
/** Doubles of a particle are spread by this much of the cloud's own spread, in logarithms. Chosen by us. */
const JITTER = 0.25;

/**
 * Multiplies the weights by how likely each particle makes what was seen, and renews the cloud when few still count.
 *
 * @returns mean likelihood before, which is near zero when no particle explains what was seen
 */
export function reweigh(particles: Particles, input: { likelihood: Float64Array; seed: number }): number {
  const { weightFrac, size } = particles;
  let sum = 0;
  for (let k = 0; k < size; k++) sum += weightFrac[k]! * input.likelihood[k]!;
  if (!(sum > 0)) return 0;
  let squares = 0;
  for (let k = 0; k < size; k++) {
    weightFrac[k] = (weightFrac[k]! * input.likelihood[k]!) / sum;
    squares += weightFrac[k]! ** 2;
  }
  if (1 / squares < RENEW_BELOW * size) renew(particles, input.seed);
  return sum;
}

/** Draws the particles anew by weight, evenly spaced, and spreads the doubles a little. */
function renew(particles: Particles, seed: number): void {
  const { size, weightFrac } = particles;
  const random = seededRandom(seed);
  const chosen = evenlyChosen(weightFrac, random.uniform());
  const spreads = FACTOR_COLUMNS.map((name) => logSpread(particles[name], weightFrac));
  for (const [name, column] of Object.entries(particles)) {
    if (name === "size" || name === "weightFrac") continue;
    const before = (column as Float64Array).slice();
    for (let k = 0; k < size; k++) (column as Float64Array)[k] = before[chosen[k]!]!;
  }
  weightFrac.fill(1 / size);
  for (const [i, name] of FACTOR_COLUMNS.entries()) {
    const column = particles[name];
    const isCapacity = name === "capacityFactor";
    for (let k = 0; k < size; k++) {
      if (chosen[k] !== chosen[k - 1]) continue;
      const scale = Math.exp(JITTER * spreads[i]! * random.normal());
      column[k]! *= scale;
      // What is missing is part of the capacity: it grows and shrinks with it.
      if (isCapacity) for (const store of ["surfaceMl", "bodyMl"] as const) particles[store][k]! *= scale;
    }
  }
}

function evenlyChosen(weightFrac: Float64Array, start: number): Int32Array {
  const size = weightFrac.length;
  const chosen = new Int32Array(size);
  let at = 0;
  let reached = weightFrac[0]!;
  for (let k = 0; k < size; k++) {
    const mark = (k + start) / size;
    while (reached < mark && at < size - 1) reached += weightFrac[++at]!;
    chosen[k] = at;
  }
  return chosen;
}

function logSpread(column: Float64Array, weightFrac: Float64Array): number {
  let mean = 0;
  for (let k = 0; k < column.length; k++) mean += weightFrac[k]! * Math.log(column[k]!);
  let square = 0;
  for (let k = 0; k < column.length; k++) square += weightFrac[k]! * (Math.log(column[k]!) - mean) ** 2;
  return Math.sqrt(square);
}
