import type { JournalEntry } from "../../journal/entry.ts";
import type { SettledHours } from "../ladder/settle-hours.ts";
import { HOUR_MS } from "../weather.ts";

/** Hours of the axis that a reading looks back on; `toHour` exclusive. */
export interface ReadingSpan {
  readonly fromHour: number;
  readonly toHour: number;
}

/** A reading may begin so much before the axis and still be used. Chosen by us: less than one spell of rain. */
const MOST_HOURS_BEFORE = 3;

/** The past hours between a reading and the one before it; null when they are not on the axis. */
export function readingSpan(
  settled: SettledHours,
  reading: { sinceUtcMs: number; atUtcMs: number },
): ReadingSpan | null {
  const from = Math.round((reading.sinceUtcMs - settled.startUtcMs) / HOUR_MS);
  const to = Math.min(settled.nowHour, Math.round((reading.atUtcMs - settled.startUtcMs) / HOUR_MS));
  if (from < -MOST_HOURS_BEFORE || to <= Math.max(0, from)) return null;
  return { fromHour: Math.max(0, from), toHour: to };
}

/** Entries of one kind that are about the site, oldest first. */
export function siteReadings<K extends "rain-gauge" | "thermometer">(
  journal: readonly JournalEntry[],
  kind: K,
): { atUtcMs: number; body: Extract<JournalEntry["body"], { kind: K }> }[] {
  const found = journal.filter((entry) => entry.body.kind === kind);
  found.sort((a, b) => a.atUtcMs - b.atUtcMs || (a.id < b.id ? -1 : 1));
  return found.map(({ atUtcMs, body }) => ({
    atUtcMs,
    body: body as Extract<JournalEntry["body"], { kind: K }>,
  }));
}
