import type { HoursReady } from "./hours-ready.ts";

/**
 * Thunder at the time of the report or in the hour before it, by WMO code 4677: 17 and 29 without rain, 91 to 94 in
 * the hour before, 95 to 99 now. [WMO306]
 */
export function isThunder(weatherCode: number): boolean {
  return weatherCode === 17 || weatherCode === 29 || (weatherCode >= 91 && weatherCode <= 99);
}

/**
 * Hours to stay out of for thunder, 1 or 0: the hour itself and, because shelter is kept until 30 minutes after the
 * last thunder [NWS3030], the hour that follows it.
 */
export function thunderHours(hours: Pick<HoursReady, "hourCount" | "weatherCode">): Uint8Array {
  const marked = new Uint8Array(hours.hourCount);
  for (let hour = 0; hour < hours.hourCount; hour++) {
    const before = hour > 0 ? hours.weatherCode[hour - 1]! : -1;
    if (isThunder(hours.weatherCode[hour]!) || isThunder(before)) marked[hour] = 1;
  }
  return marked;
}
