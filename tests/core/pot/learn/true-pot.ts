import type { MixInVessel } from "../../../../core/mix/mix-in-vessel.ts";
import type { GroupValues } from "../../../../core/plant/group.ts";
import type { RandomStream } from "../../../../core/weather/seeded-random.ts";

/**
 * A pot as it might really be, for tests of learning. Another drying law than the project's: one store; evaporation
 * falls as a power of the content from the first day on, transpiration saturates smoothly, and the hour's losses come
 * from the mean of its ends. What it is made of is drawn wider than the cloud draws.
 */
export interface TruePot {
  readonly capacityMl: number;
  readonly unusableMl: number;
  readonly dryMassKg: number;
  /** mL per mm of ET0 from a full pot. */
  readonly surfaceMlPerMm: number;
  readonly plantMlPerMm: number;
  readonly wallMlPerMm: number;
  readonly evaporationPower: number;
  readonly stressSteepness: number;
  /** Dry mix lets this much past at first; 0 for mixes that take it up. */
  readonly shedsMl: number;
  readonly shedsBelowMl: number;
}

/** Spreads of the truth, wider than any that the cloud draws with (logarithms; capacity times its own range). */
const TRUE_SPREAD = { demand: 0.2, thirst: 0.5, surface: 0.46, wall: 0.6, capacity: 1.2, mass: 1.2 } as const;

export function drawTruePot(of: {
  inVessel: MixInVessel;
  values: GroupValues;
  canopyAreaCm2: number;
  plantMassKg: number;
  porous: boolean;
  random: RandomStream;
}): TruePot {
  const { inVessel, values, random } = of;
  const { hold } = inVessel;
  const factor = (sd: number) => Math.exp(sd * random.normal());
  const { low, high } = inVessel.ranges.capacityFactor;
  const capacitySd = (TRUE_SPREAD.capacity * Math.log(high / low)) / 2.563;
  const capacity = Math.sqrt(low * high) * factor(capacitySd);
  const demand = factor(TRUE_SPREAD.demand);
  const cover = Math.min(1, of.canopyAreaCm2 / hold.surfaceAreaCm2);
  const { meanKg, sdKg } = trueDryMass(of);
  const dryMassKg = meanKg + sdKg * random.normal();
  return {
    capacityMl: hold.capacityMl * capacity,
    unusableMl: hold.unusableMl * capacity * (1 + 0.15 * random.normal()),
    dryMassKg,
    surfaceMlPerMm:
      1.1 * (1 - 0.6 * cover) * hold.surfaceAreaCm2 * 0.1 * demand * factor(TRUE_SPREAD.surface),
    plantMlPerMm: values.basalCoefficient * of.canopyAreaCm2 * 0.1 * demand * factor(TRUE_SPREAD.thirst),
    wallMlPerMm: of.porous ? 0.5 * hold.wallAreaCm2 * 0.1 * demand * factor(TRUE_SPREAD.wall) : 0,
    evaporationPower: 0.4 + random.uniform(),
    stressSteepness: 3 + 4 * random.uniform(),
    shedsMl: inVessel.repellentBelowFrac === null ? 0 : 0.2 * random.uniform() * capacity * hold.volumeMl,
    shedsBelowMl: (inVessel.repellentBelowFrac ?? 0) * capacity * hold.volumeMl,
  };
}

/** Mean and spread of what the scale shows beside the water. */
export function trueDryMass(of: { inVessel: MixInVessel; plantMassKg: number }): {
  meanKg: number;
  sdKg: number;
} {
  const { dryDensityKgPerL, hold } = of.inVessel;
  const mixKg = (dryDensityKgPerL * hold.volumeMl) / 1000;
  return {
    meanKg: hold.dryMassKg + of.plantMassKg,
    sdKg: TRUE_SPREAD.mass * Math.hypot(0.1 * mixKg, 0.5 * of.plantMassKg),
  };
}

/** Content after an hour. */
export function trueHour(pot: TruePot, waterMl: number, hour: { et0Mm: number; rainMl: number }): number {
  const filled = Math.min(pot.capacityMl, waterMl + hour.rainMl);
  const first = lossMl(pot, filled, hour.et0Mm);
  const second = lossMl(pot, Math.max(0, filled - first), hour.et0Mm);
  return Math.max(0, filled - (first + second) / 2);
}

function lossMl(pot: TruePot, waterMl: number, et0Mm: number): number {
  const fullness = Math.max(0, waterMl / pot.capacityMl);
  const usable = Math.max(0, waterMl - pot.unusableMl) / (pot.capacityMl - pot.unusableMl);
  const surface = pot.surfaceMlPerMm * fullness ** pot.evaporationPower;
  const plant = pot.plantMlPerMm * (1 - Math.exp(-pot.stressSteepness * usable));
  return et0Mm * (surface + plant + pot.wallMlPerMm * fullness);
}

/** Days from full until the usable share falls to a point, with whole and broken hours; NaN when not in the hours. */
export function trueDaysToDry(
  pot: TruePot,
  weather: { et0Mm: Float64Array; fromHour: number },
  refillFrac: number,
): number {
  const limitMl = pot.unusableMl + refillFrac * (pot.capacityMl - pot.unusableMl);
  let waterMl = pot.capacityMl;
  for (let hour = weather.fromHour; hour < weather.et0Mm.length; hour++) {
    const next = trueHour(pot, waterMl, { et0Mm: weather.et0Mm[hour]!, rainMl: 0 });
    if (next <= limitMl) return (hour - weather.fromHour + (waterMl - limitMl) / (waterMl - next)) / 24;
    waterMl = next;
  }
  return Number.NaN;
}
