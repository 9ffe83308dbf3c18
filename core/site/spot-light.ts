import { HOUR_MS } from "../weather/weather.ts";
import { localHour } from "./local-days.ts";
import type { Spot } from "./spot.ts";

/**
 * Share of direct sun that reaches a spot, by hour of an axis, 0 to 1: the spot's own share, cut in its shade
 * windows. A window that cuts part of an hour counts for that part.
 */
export function sunShareByHour(
  axis: { startUtcMs: number; hourCount: number; zone: string },
  spot: Pick<Spot, "sunFrac" | "shade">,
): Float64Array {
  const share = new Float64Array(axis.hourCount).fill(spot.sunFrac);
  if (!spot.shade?.length) return share;
  for (let hour = 0; hour < axis.hourCount; hour++) {
    const from = localHour(axis.startUtcMs + hour * HOUR_MS, axis.zone);
    let sun = spot.sunFrac;
    for (const window of spot.shade) {
      const shaded = overlapHours(from, window);
      sun = Math.min(sun, spot.sunFrac * (1 - shaded) + Math.min(spot.sunFrac, window.sunFrac) * shaded);
    }
    share[hour] = sun;
  }
  return share;
}

/** Part of the hour beginning at a local clock time that lies in a window; windows may run over midnight. */
function overlapHours(from: number, window: { fromHour: number; toHour: number }): number {
  const length = (window.toHour - window.fromHour + 24) % 24 || (window.toHour === window.fromHour ? 0 : 24);
  let total = 0;
  for (const turn of [-24, 0, 24]) {
    const start = Math.max(from, window.fromHour + turn);
    const end = Math.min(from + 1, window.fromHour + length + turn);
    total += Math.max(0, end - start);
  }
  return Math.min(1, total);
}
