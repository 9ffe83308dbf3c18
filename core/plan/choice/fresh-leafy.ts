import type { PotNow } from "../../pot/pot-now.ts";

/** Days after planting within which a leafy plant that had no water is watered in. Later it is simply dry or not. */
const WATERED_IN_WITHIN_DAYS = 3;
const DAY_MS = 86_400_000;

/** Leafy, planted, and not a drop since: to be watered in at once. Common practice for plants with ordinary leaves. */
export function awaitsWateringIn(now: PotNow, nowUtcMs: number): boolean {
  const { plantedUtcMs, lastWateredUtcMs } = now;
  if (!now.values.leafy || plantedUtcMs === null) return false;
  if (nowUtcMs - plantedUtcMs > WATERED_IN_WITHIN_DAYS * DAY_MS) return false;
  return lastWateredUtcMs === null || lastWateredUtcMs < plantedUtcMs;
}
