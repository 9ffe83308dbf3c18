import type { JournalEntry } from "../../../core/journal/entry.ts";

/** Days since planting that stand for "long ago": past every wait after root work. Chosen by us. */
const LONG_AGO_MS = 400 * 86_400_000;

/** The instant that stands for a planting of which only is known that it was long ago. */
export function longAgoUtcMs(nowUtcMs: number): number {
  return nowUtcMs - LONG_AGO_MS;
}

/** Whether an entry is such a planting: to the millisecond as long before it was entered, as nobody enters one. */
export function isPlantedLongAgo({ atUtcMs, recordedUtcMs, body }: JournalEntry): boolean {
  return body.kind === "planted" && atUtcMs === longAgoUtcMs(recordedUtcMs);
}
