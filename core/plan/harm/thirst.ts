import type { GroupValues } from "../../plant/group.ts";
import type { Course, HarmTally } from "./course.ts";
import { refillContentMl, refillFracNow } from "./refill-point.ts";
import { workColumns } from "./work-columns.ts";

type Column = Float64Array;

/**
 * Harm by the time that the days of drought which the group stands are used up. Chosen by us because growth and
 * flowers are lost by then, but the plant is not.
 */
const WORN_OUT_HARM = 0.05;
/** Share of what is left that each further stretch of that length takes. Chosen by us. */
const LOSS_PER_STRETCH = 0.6;
/** Most drought so far that is counted on, in the days that the group stands. Chosen by us: from there each day costs most. */
const COUNTED_ON = 1;
/** How many times longer a plant wholly at rest stands drought: leafy ones, and those that store. Chosen by us. */
const REST_STANDS_TIMES = { leafy: 3, storing: 10 } as const;
/** A refill point is spread over at least this share, so that dryness comes on gradually. Chosen by us. */
const LEAST_BAND_FRAC = 0.08;

/**
 * Harm of thirst. Dryness is 0 at the refill point and 1 where nothing usable is left, by the square between, as a
 * plant first only slows down; the days of dryness without a break are held against the days that the group stands,
 * and its harm grows slowly up to them and fast after. A drought that has lasted is counted on, its harm so far not; but
 * no plant is given up for one that nobody saw, as water may have gone unnoted.
 */
export function thirst(course: Course, into: HarmTally): void {
  const { trajectory, now, dayOfHour } = course;
  const { hourCount, size, waterMl } = trajectory;
  const { capacityFactor, weightFrac, droughtFrac } = now.cloud;
  const refillAtMl = refillContentMl(now);
  const bandMl = Math.max(refillFracNow(now), LEAST_BAND_FRAC) * now.inVessel.hold.usableMl;
  const stands = standsDays(now);
  const [refillMl, perBandMl, dryDays, harmed] = workColumns(size) as [Column, Column, Column, Column];
  for (let i = 0; i < size; i++) {
    refillMl[i] = refillAtMl * capacityFactor[i]!;
    perBandMl[i] = 1 / (bandMl * capacityFactor[i]!);
    const sofar = Math.min(COUNTED_ON, droughtFrac?.[i] ?? 0);
    dryDays[i] = sofar * stands;
    harmed[i] = harmOfDrought(sofar);
  }
  const drought = { refillMl, perBandMl, dryDays, harmed, stands, weightFrac, into };
  for (let hour = 0; hour < hourCount; hour++) {
    const day = dayOfHour[hour]!;
    dryHour(drought, { waterMl, at: hour * size, day });
    if (hour + 1 === hourCount || dayOfHour[hour + 1] !== day) {
      for (let i = 0; i < size; i++) if (dryDays[i]! > 0) tell(drought, i, day);
    }
  }
}

/** Droughts by particle as they run on. */
interface Drought {
  readonly refillMl: Column;
  readonly perBandMl: Column;
  readonly dryDays: Column;
  /** Harm told so far. */
  readonly harmed: Column;
  readonly stands: number;
  readonly weightFrac: Column;
  readonly into: HarmTally;
}

/** One hour of dryness for all particles, from the first index of the hour in the water column. */
function dryHour(drought: Drought, hour: { waterMl: Column; at: number; day: number }): void {
  const { refillMl, perBandMl, dryDays, harmed } = drought;
  const { waterMl, at } = hour;
  for (let i = 0; i < refillMl.length; i++) {
    const lackMl = refillMl[i]! - waterMl[at + i]!;
    if (lackMl > 0) {
      const dryness = lackMl * perBandMl[i]!;
      dryDays[i]! += dryness < 1 ? (dryness * dryness) / 24 : 1 / 24;
    } else if (dryDays[i]! > 0) {
      tell(drought, i, hour.day);
      dryDays[i] = 0;
      harmed[i] = 0;
    }
  }
}

/** Sums up harm by the day and where a drought ends, as its steps within a day add up to the same. */
function tell({ dryDays, harmed, stands, weightFrac, into }: Drought, i: number, day: number): void {
  const harm = harmOfDrought(dryDays[i]! / stands);
  into.byParticle[i]! += harm - harmed[i]!;
  into.byDay[day]! += weightFrac[i]! * (harm - harmed[i]!);
  harmed[i] = harm;
}

/** How dry a share of usable water is: 0 at the refill point, 1 where nothing is left or, for low ones, a band below. */
export function drynessOf(leftFrac: number, refillFrac: number): number {
  return Math.min(1, Math.max(0, (refillFrac - leftFrac) / Math.max(refillFrac, LEAST_BAND_FRAC)));
}

/** Days of drought that a plant stands as far as it rests. */
export function standsDays({
  values,
  rest,
}: {
  values: Pick<GroupValues, "leafy" | "dryDays">;
  rest: { restingShareFrac: number };
}): number {
  const times = values.leafy ? REST_STANDS_TIMES.leafy : REST_STANDS_TIMES.storing;
  return values.dryDays * (1 + (times - 1) * rest.restingShareFrac);
}

/** Harm after days of drought told in the days that the group stands. Rising, 0 to 1. */
export function harmOfDrought(standsShare: number): number {
  if (standsShare <= 1) return WORN_OUT_HARM * standsShare;
  return 1 - (1 - WORN_OUT_HARM) * (1 - LOSS_PER_STRETCH) ** (standsShare - 1);
}
