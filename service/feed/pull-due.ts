import type { Site } from "../../core/site/site.ts";
import type { FeedState } from "./feed-state.ts";
import { jitterFrac } from "./jitter.ts";

const HOUR_MS = 3_600_000;

/** Between good pulls: the primary's models are renewed every one to six hours. Chosen by us. */
const PULL_EVERY_MS = 3 * HOUR_MS;
/** Later than the round time by up to this, so that houses do not call in step or on the full hour. */
const JITTER_MS = 20 * 60_000;

/**
 * When the weather of a site should next be pulled: three hours and some minutes after the last good forecast, or
 * when the rest after a failure is over.
 */
export function pullDueUtcMs(state: FeedState, site: Site): number {
  const { failuresInRow, lastGoodUtcMs, notBeforeUtcMs } = state.forecast;
  if (failuresInRow > 0) return notBeforeUtcMs;
  if (lastGoodUtcMs === null) return 0;
  const late = jitterFrac(site.id, site.latDeg, site.lonDeg, Math.floor(lastGoodUtcMs / HOUR_MS));
  return lastGoodUtcMs + PULL_EVERY_MS + Math.round(late * JITTER_MS);
}
