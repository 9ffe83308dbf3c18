import { FACTOR_COLUMNS, type Particles } from "../particles.ts";
import { weightedCovariance, weightedMean } from "./weighted.ts";

type Spreads = Readonly<Record<(typeof FACTOR_COLUMNS)[number] | "tareKg", number>>;

/**
 * How much of the first spread comes back in 30 days: plants grow, mixes settle, clay clogs. Chosen by us; what the
 * plant and the weather decide drifts faster than what the mix decides.
 */
const BACK_IN_30_DAYS: Spreads = {
  capacityFactor: 0.15,
  thirstFactor: 0.4,
  surfaceFactor: 0.3,
  wallFactor: 0.15,
  catchFactor: 0.3,
  tareKg: 0.15,
};

/** What was learned fades: each spread grows back towards the one it was drawn with, the middle staying where it is. */
export function drift(particles: Particles, over: { days: number; drawn: Spreads }): void {
  if (over.days <= 0) return;
  const logs = new Float64Array(particles.size);
  for (const name of FACTOR_COLUMNS) {
    const column = particles[name];
    for (let k = 0; k < logs.length; k++) logs[k] = Math.log(column[k]!);
    const { mean, scale } = regrown(logs, { particles, name, over });
    if (scale === 1) continue;
    for (let k = 0; k < column.length; k++) {
      const before = column[k]!;
      column[k] = Math.exp(mean + scale * (logs[k]! - mean));
      if (name === "capacityFactor") scaleStores(particles, { particle: k, by: column[k]! / before });
    }
  }
  const { tareKg } = particles;
  const { mean, scale } = regrown(tareKg, { particles, name: "tareKg", over });
  for (let k = 0; k < tareKg.length; k++) tareKg[k] = mean + scale * (tareKg[k]! - mean);
}

/** What is missing is part of the capacity: it grows and shrinks with it. */
function scaleStores(particles: Particles, { particle, by }: { particle: number; by: number }): void {
  particles.surfaceMl[particle]! *= by;
  particles.bodyMl[particle]! *= by;
}

function regrown(
  column: Float64Array,
  of: { particles: Particles; name: keyof Spreads; over: { days: number; drawn: Spreads } },
): { mean: number; scale: number } {
  const { weightFrac } = of.particles;
  const drawn = of.over.drawn[of.name];
  const mean = weightedMean(column, weightFrac);
  const variance = weightedCovariance(column, column, weightFrac);
  const grown = variance + ((BACK_IN_30_DAYS[of.name] * drawn) ** 2 * of.over.days) / 30;
  const scale = variance > 0 && variance < drawn ** 2 ? Math.sqrt(Math.min(grown, drawn ** 2) / variance) : 1;
  return { mean, scale };
}
