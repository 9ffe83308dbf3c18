import type { Course } from "../harm/course.ts";
import { refillFracNow } from "../harm/refill-point.ts";

/**
 * Share of the water missing now that rain will have brought by the end of each plan day, mean of the cloud. Only a
 * pot that is not full now can be relieved.
 */
export function rainRelief({ now, trajectory, days }: Course): Float64Array {
  const { size, wettedMl } = trajectory;
  const { weightFrac, capacityFactor, waterMl } = now.cloud;
  const capacityMl = now.inVessel.hold.capacityMl;
  const relief = new Float64Array(days.length);
  for (let i = 0; i < size; i++) {
    const fullMl = capacityMl * capacityFactor[i]!;
    const missingMl = Math.max(fullMl - waterMl[i]!, 0.05 * fullMl);
    let rainMl = 0;
    for (const [d, day] of days.entries()) {
      for (let hour = day.fromHour; hour < day.toHour && rainMl < missingMl; hour++) {
        rainMl += wettedMl[hour * size + i]!;
      }
      relief[d]! += weightFrac[i]! * Math.min(1, rainMl / missingMl);
    }
  }
  return relief;
}

/**
 * What the pot has used by the end of each plan day, mean of the cloud, told in pours: 1 is all that it holds between
 * full and its refill point.
 */
export function usedInPours({ now, trajectory, days }: Course): Float64Array {
  const { size, wettedMl, drainedMl, waterMl } = trajectory;
  const { weightFrac, capacityFactor } = now.cloud;
  const pourMl = now.inVessel.hold.usableMl * Math.max(0.1, 1 - refillFracNow(now));
  const used = new Float64Array(days.length);
  for (let i = 0; i < size; i++) {
    let netMl = now.cloud.waterMl[i]! + now.cloud.saucerMl[i]!;
    for (const [d, day] of days.entries()) {
      for (let hour = day.fromHour; hour < day.toHour; hour++) {
        netMl += wettedMl[hour * size + i]! - drainedMl[hour * size + i]!;
      }
      const lostMl = netMl - waterMl[(day.toHour - 1) * size + i]!;
      used[d]! += weightFrac[i]! * Math.min(1, Math.max(0, lostMl / (pourMl * capacityFactor[i]!)));
    }
  }
  return used;
}
