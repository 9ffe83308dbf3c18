import { emptyColumn, type SpotWork } from "./spot-work.ts";

/** Hours in which a closed room takes over most of a change outside. Chosen by us: walls and floor hold half a day. */
const ROOM_LAG_HOURS = 12;
const FIRST_DAY_HOURS = 24;

/**
 * Air among the pots, °C. Outdoors that of the site. A room follows the air outside with a lag, at night never below it
 * plus the room's own warmth, and never below what it is heated to.
 */
export function airAtSpotC(work: SpotWork): Float64Array {
  const { hours, spot } = work;
  if (spot.kind !== "indoors") return hours.tempC.slice();
  const { hourCount, memberCount, tempC } = hours;
  const out = emptyColumn(work);
  const room = firstDayMeans(work);
  const floor = spot.heatedToC ?? Number.NEGATIVE_INFINITY;
  for (let hour = 0; hour < hourCount; hour++) {
    for (let m = 0; m < memberCount; m++) {
      const i = hour * memberCount + m;
      room[m]! += (tempC[i]! - room[m]!) / ROOM_LAG_HOURS;
      const lagged = work.isNight[hour] ? Math.max(room[m]!, tempC[i]! + spot.nightWarmthC) : room[m]!;
      out[i] = Math.max(floor, lagged);
    }
  }
  return out;
}

/** Where each member's room begins: the mean of its first day outside. */
function firstDayMeans({ hours }: SpotWork): Float64Array {
  const { memberCount, tempC } = hours;
  const count = Math.min(FIRST_DAY_HOURS, hours.hourCount);
  const means = new Float64Array(memberCount);
  for (let i = 0; i < count * memberCount; i++) means[i % memberCount]! += tempC[i]! / count;
  return means;
}
