import { quantilesOf, shareWhere } from "../plan/rows/spread-of.ts";
import type { SpotForcing } from "../site/forcing.ts";
import type { LocalDay } from "../site/local-days.ts";
import type { CalendarDay } from "../site/site.ts";
import type { Spread } from "../weather/spread.ts";
import { HOUR_MS } from "../weather/weather.ts";
import type { PotNow } from "./pot-now.ts";
import { rollOut } from "./roll-out.ts";
import type { Pour, Trajectory } from "./trajectory.ts";
import { type UncertaintyShares, uncertaintyShares } from "./uncertainty-shares.ts";
import { type WetBaseOutlook, wetBaseOutlook } from "./wet-base-outlook.ts";

/** One pot at one spot over the coming days. */
export interface Outlook {
  readonly days: readonly OutlookDay[];
  /** Days until the refill point is first reached; Infinity in those that do not reach it. */
  readonly daysToDry: Spread;
  readonly wetBase: WetBaseOutlook;
  /** The coldest hour at plant level. */
  readonly coldest: { readonly utcMs: number; readonly tempC: Spread };
  /** Where the uncertainty of the content at the end of each day comes from. */
  readonly uncertainty: readonly UncertaintyShares[];
}

export interface OutlookDay {
  readonly day: CalendarDay;
  /** Content at the end of the day as a share of what the drained pot holds. */
  readonly contentFrac: Spread;
  /** Share of the cloud that reaches the refill point by the end of the day. */
  readonly reachedRefillFrac: number;
}

export interface OutlookInput {
  readonly now: PotNow;
  /** The spot's, one member for each particle, from now on. */
  readonly forcing: SpotForcing;
  readonly days: readonly LocalDay[];
  readonly pours?: readonly Pour[];
  /** Share of usable water left at which the next watering is due. */
  readonly refillFrac: number;
}

/** What is likely to become of a pot at a spot. */
export function outlook(input: OutlookInput): Outlook {
  const { now, forcing, days, pours = [], refillFrac } = input;
  const hourCount = days.at(-1)?.toHour ?? 0;
  const stretches = [{ fromHour: 0, forcing }];
  const course = rollOut({ now, stretches, pours, hourCount });
  const dryAtHour = firstDryHour({ now, course, refillFrac });
  const { weightFrac } = now.cloud;
  return {
    days: days.map(({ day, toHour }) => ({
      day,
      contentFrac: spread(contentFrac(now, course, toHour - 1), weightFrac),
      reachedRefillFrac: shareWhere({ values: dryAtHour, weightFrac }, (hour) => hour < toHour),
    })),
    daysToDry: spread(
      dryAtHour.map((hour) => (hour + 1) / 24),
      weightFrac,
    ),
    wetBase: wetBaseOutlook({ now, course, forcing }),
    coldest: coldestHour({ forcing, hourCount, weightFrac }),
    uncertainty: uncertaintyShares({ now, forcing, days, pours }),
  };
}

/** Content as a share of what each particle holds when drained. */
export function contentFrac(now: PotNow, course: Trajectory, hour: number): Float64Array {
  const { capacityFactor } = now.cloud;
  const { capacityMl } = now.inVessel.hold;
  return capacityFactor.map((factor, k) => course.waterMl[hour * course.size + k]! / (factor * capacityMl));
}

/** The hour in which each particle first reaches the refill point; -1 when it is there already, Infinity when never. */
function firstDryHour(of: { now: PotNow; course: Trajectory; refillFrac: number }): Float64Array {
  const { now, course } = of;
  const { unusableMl, usableMl } = now.inVessel.hold;
  return now.cloud.capacityFactor.map((factor, k) => {
    const limitMl = factor * (unusableMl + of.refillFrac * usableMl);
    if (now.cloud.waterMl[k]! <= limitMl) return -1;
    for (let hour = 0; hour < course.hourCount; hour++) {
      if (course.waterMl[hour * course.size + k]! <= limitMl) return hour;
    }
    return Number.POSITIVE_INFINITY;
  });
}

function coldestHour(of: {
  forcing: SpotForcing;
  hourCount: number;
  weightFrac: Float64Array;
}): Outlook["coldest"] {
  const { forcing, hourCount, weightFrac } = of;
  const { memberCount, plantTempC } = forcing;
  const coldestC = new Float64Array(memberCount).fill(Number.POSITIVE_INFINITY);
  let atHour = 0;
  let meanAtC = Number.POSITIVE_INFINITY;
  for (let hour = 0; hour < hourCount; hour++) {
    let sumC = 0;
    for (let m = 0; m < memberCount; m++) {
      const tempC = plantTempC[hour * memberCount + m]!;
      sumC += tempC;
      coldestC[m] = Math.min(coldestC[m]!, tempC);
    }
    if (sumC / memberCount >= meanAtC) continue;
    meanAtC = sumC / memberCount;
    atHour = hour;
  }
  const weights =
    memberCount === weightFrac.length ? weightFrac : new Float64Array(memberCount).fill(1 / memberCount);
  return { utcMs: forcing.startUtcMs + atHour * HOUR_MS, tempC: spread(coldestC, weights) };
}

function spread(values: Float64Array, weightFrac: Float64Array): Spread {
  const [low, mid, high] = quantilesOf({ values, weightFrac }, [0.1, 0.5, 0.9]);
  return { low: low!, mid: mid!, high: high! };
}
