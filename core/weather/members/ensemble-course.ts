import type { MemberColumns } from "../weather.ts";
import { aheadOf, type MemberFrame, realMember } from "./member-frame.ts";

/** Each member's own course of one quantity, and how wide the courses lie on each day. */
export interface EnsembleCourse {
  /** Index = hour * size + member. */
  readonly column: Float64Array;
  /** Standard deviation of the real members by day of the frame; 0 without an ensemble. */
  readonly spreadByDay: Float64Array;
}

/** Lead days from which the ensemble's mean begins to replace the single run, and by which it has. Chosen by us:
 * a single run's errors pass those of the season's mean at day 6 to 10. [RALEIGH2026] */
const BLEND_FROM_DAY = 3;
const BLEND_TO_DAY = 7;
/** Hours over which the steady difference of the two is taken, so that the blend does not move the place. */
const PLACE_HOURS = 48;

/**
 * Each member's course: the single run, moved over to the ensemble's mean as days pass, plus the member's own departure
 * from that mean. Without an ensemble, or where it tells nothing, the single run for all.
 */
export function ensembleCourse(
  frame: MemberFrame,
  name: Exclude<keyof MemberColumns, "memberCount">,
): EnsembleCourse {
  const base = aheadOf(frame, name);
  const column = new Float64Array(frame.hourCount * frame.size);
  const spreadByDay = new Float64Array(frame.days.length);
  for (let hour = 0; hour < frame.hourCount; hour++) {
    column.fill(base[hour]!, hour * frame.size, (hour + 1) * frame.size);
  }
  if (!frame.ensemble) return { column, spreadByDay };
  const means = hourMeans(frame, name);
  const place = placeDifference(base, means);
  frame.days.forEach((day, index) => {
    const weight = Math.min(1, Math.max(0, (day.leadDay - BLEND_FROM_DAY) / (BLEND_TO_DAY - BLEND_FROM_DAY)));
    let square = 0;
    let known = 0;
    for (let hour = day.fromHour; hour < day.toHour; hour++) {
      const mean = means[hour]!;
      if (Number.isNaN(mean)) continue;
      const centre = (1 - weight) * base[hour]! + weight * (mean + place);
      for (let m = 0; m < frame.size; m++) {
        const own = frame.ensemble!.columns[name][hour * frame.ensemble!.memberCount + realMember(frame, m)]!;
        const departure = own - mean;
        column[hour * frame.size + m] = centre + departure;
        square += departure ** 2;
        known++;
      }
    }
    spreadByDay[index] = known > 0 ? Math.sqrt(square / known) : 0;
  });
  return { column, spreadByDay };
}

/** Mean of the real members by hour; NaN where one of them is unknown. */
function hourMeans(frame: MemberFrame, name: Exclude<keyof MemberColumns, "memberCount">): Float64Array {
  const { memberCount, columns } = frame.ensemble!;
  const means = new Float64Array(frame.hourCount).fill(Number.NaN);
  const hours = Math.min(frame.hourCount, columns[name].length / memberCount);
  for (let hour = 0; hour < hours; hour++) {
    let sum = 0;
    for (let m = 0; m < memberCount; m++) sum += columns[name][hour * memberCount + m]!;
    means[hour] = sum / memberCount;
  }
  return means;
}

function placeDifference(base: Float64Array, means: Float64Array): number {
  let sum = 0;
  let known = 0;
  for (let hour = 0; hour < Math.min(PLACE_HOURS, base.length); hour++) {
    if (Number.isNaN(means[hour]!)) continue;
    sum += base[hour]! - means[hour]!;
    known++;
  }
  return known > 0 ? sum / known : 0;
}

/** What is left to add so that members as wide as `has` become as wide as `wanted`; 0 when they already are. */
export function missingSd(wanted: number, has: number): number {
  return Math.sqrt(Math.max(0, wanted ** 2 - has ** 2));
}
