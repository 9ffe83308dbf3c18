import type { Course } from "../harm/course.ts";

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
