import type { JournalEntry } from "../journal/entry.ts";
import type { Change, Plan, PotPlan } from "./plan.ts";

/**
 * Pots whose deed differs from the last plan, and why: something was noted for the pot since; or the plan is for
 * another day; or else the weather.
 */
export function changesSince(
  previous: Plan,
  { rows, journal, forDay }: { rows: readonly PotPlan[]; journal: readonly JournalEntry[]; forDay: string },
): Change[] {
  const before = new Map(previous.pots.map((row) => [row.potId, row]));
  const sinceUtcMs = Date.parse(previous.issuedAt);
  const noted = new Set(
    journal.filter((entry) => entry.recordedUtcMs > sinceUtcMs).map((entry) => entry.potId),
  );
  return rows.flatMap((row): Change[] => {
    const was = before.get(row.potId)?.action;
    if (was === undefined || was === row.action) return [];
    const because = noted.has(row.potId) ? "journal" : previous.forDay !== forDay ? "day-passed" : "weather";
    return [{ potId: row.potId, was, is: row.action, because }];
  });
}
