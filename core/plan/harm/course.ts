import type { PotNow } from "../../pot/pot-now.ts";
import type { Stretch, Trajectory } from "../../pot/trajectory.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import type { PlanDay } from "../days/plan-days.ts";

/** One pot rolled out along one course of action: what every water-borne harm term reads. */
export interface Course {
  readonly now: PotNow;
  readonly stretches: readonly Stretch[];
  readonly trajectory: Trajectory;
  readonly startUtcMs: number;
  readonly days: readonly PlanDay[];
  /** Plan day of each hour. */
  readonly dayOfHour: Int16Array;
}

/** Expected harm of one term, 1 = the plant as good as lost. */
export interface HarmTally {
  /** By plan day, over the cloud. */
  readonly byDay: Float64Array;
  /** By particle, over the horizon. */
  readonly byParticle: Float64Array;
}

/** A tally with nothing in it. */
export function emptyTally(dayCount: number, size: number): HarmTally {
  return { byDay: new Float64Array(dayCount), byParticle: new Float64Array(size) };
}

/** Expected harm over the horizon. */
export function totalHarm({ byDay }: Pick<HarmTally, "byDay">): number {
  let sum = 0;
  for (const harm of byDay) sum += harm;
  return sum;
}

/** The forcing that holds in each hour, as spans in order; each span ends where the next begins. */
export function forcingSpans(
  stretches: readonly Stretch[],
  hourCount: number,
): { forcing: SpotForcing; fromHour: number; toHour: number }[] {
  return stretches.map(({ forcing, fromHour }, i) => ({
    forcing,
    fromHour,
    toHour: Math.min(hourCount, stretches[i + 1]?.fromHour ?? hourCount),
  }));
}
