import { schedule } from "node-cron";
import { beat } from "./beat.ts";
import type { JobParts } from "./job-parts.ts";

export interface Heartbeat {
  /** Beats now, unless a beat is under way; resolves when that one is over. */
  beatNow(): Promise<void>;
  /** No further beat; resolves when the one under way is over. */
  stop(): Promise<void>;
}

/** A beat every minute. The cron library only beats: what is due is reckoned from the store each time. */
export function startHeartbeat(parts: JobParts, { beating }: { beating: boolean }): Heartbeat {
  let underWay: Promise<void> | null = null;
  const beatNow = (): Promise<void> => {
    underWay ??= beat(parts)
      .catch((error: unknown) => parts.log.error({ event: "beat-broke", error }))
      .finally(() => {
        underWay = null;
      });
    return underWay;
  };
  const task = beating
    ? schedule("* * * * *", beatNow, { name: "heartbeat", suppressMissedWarning: true })
    : null;
  return {
    beatNow,
    async stop() {
      await task?.destroy();
      await underWay;
    },
  };
}
