import type { SpotForcing } from "../site/forcing.ts";
import type { LocalDay } from "../site/local-days.ts";
import type { Cloud } from "./cloud.ts";
import type { PotNow } from "./pot-now.ts";
import { rollOut } from "./roll-out.ts";
import type { Pour, Trajectory } from "./trajectory.ts";

/** Shares of the variance of the content; they sum to 1, or are both 0 when nothing is uncertain. */
export interface UncertaintyShares {
  readonly weatherFrac: number;
  readonly potFrac: number;
}

/**
 * How much of what is not known about the content at the end of each day comes from the weather and how much from the
 * pot: the variance with one pot under all weathers beside the variance of all pots under one weather. The middle
 * particle by content and the middle member by ET0 stand for the one.
 */
export function uncertaintyShares(of: {
  now: PotNow;
  forcing: SpotForcing;
  days: readonly LocalDay[];
  pours: readonly Pour[];
}): UncertaintyShares[] {
  const { now, forcing, days, pours } = of;
  const hourCount = days.at(-1)?.toHour ?? 0;
  const run = (cloud: Cloud, weather: SpotForcing) =>
    rollOut({ now: { ...now, cloud }, stretches: [{ fromHour: 0, forcing: weather }], pours, hourCount });
  const pots = run(now.cloud, oneMember(forcing, middleMember(forcing)));
  const weathers = run(oneParticle(now.cloud, middleOf(now.cloud.waterMl)), forcing);
  const even = new Float64Array(now.cloud.size).fill(1 / now.cloud.size);
  return days.map(({ toHour }) => {
    const pot = variance(pots, toHour - 1, now.cloud.weightFrac);
    const weather = variance(weathers, toHour - 1, even);
    const sum = pot + weather;
    return sum > 0 ? { weatherFrac: weather / sum, potFrac: pot / sum } : { weatherFrac: 0, potFrac: 0 };
  });
}

function variance(course: Trajectory, hour: number, weightFrac: Float64Array): number {
  const row = course.waterMl.subarray(hour * course.size, (hour + 1) * course.size);
  let mean = 0;
  for (let k = 0; k < row.length; k++) mean += weightFrac[k]! * row[k]!;
  let sum = 0;
  for (let k = 0; k < row.length; k++) sum += weightFrac[k]! * (row[k]! - mean) ** 2;
  return sum;
}

/** The forcing of one member alone. */
function oneMember(forcing: SpotForcing, member: number): SpotForcing {
  const { memberCount, hourCount } = forcing;
  const pick = (column: Float64Array) =>
    Float64Array.from({ length: hourCount }, (_, hour) => column[hour * memberCount + member]!);
  return {
    ...forcing,
    memberCount: 1,
    et0Mm: pick(forcing.et0Mm),
    rainMm: pick(forcing.rainMm),
    tempC: pick(forcing.tempC),
    plantTempC: pick(forcing.plantTempC),
    lightMjPerM2: pick(forcing.lightMjPerM2),
  };
}

function oneParticle(cloud: Cloud, particle: number): Cloud {
  const same = Object.entries(cloud).map(([name, column]) => [
    name,
    column instanceof Float64Array ? new Float64Array(cloud.size).fill(column[particle]!) : column,
  ]);
  return Object.fromEntries(same) as Cloud;
}

function middleMember({ memberCount, et0Mm }: SpotForcing): number {
  const sums = new Float64Array(memberCount);
  for (let i = 0; i < et0Mm.length; i++) sums[i % memberCount]! += et0Mm[i]!;
  return middleOf(sums);
}

/** Index of the middle value. */
function middleOf(values: Float64Array): number {
  const order = [...values.keys()].sort((a, b) => values[a]! - values[b]! || a - b);
  return order[Math.floor(order.length / 2)]!;
}
