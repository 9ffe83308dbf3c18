import type { JournalEntry } from "../journal/entry.ts";
import type { Action, Deed } from "./deed.ts";
import type { Change, Plan } from "./plan.ts";
import type { PotPlan } from "./pot-plan.ts";

/**
 * Pots whose deeds differ from the last plan, and why: something was noted for the pot since; or the plan is for
 * another day; or else the weather.
 */
export function changesSince(
  previous: Plan,
  { rows, journal, forDay }: { rows: readonly PotPlan[]; journal: readonly JournalEntry[]; forDay: string },
): Change[] {
  const before = new Map(previous.pots.map((row) => [row.potId, row]));
  const soonUtcMs = sinceUtcMs(previous) + SOON_MS;
  const noted = new Set(
    journal.filter((entry) => entry.recordedUtcMs > sinceUtcMs(previous)).map((entry) => entry.potId),
  );
  return rows.flatMap((row): Change[] => {
    const turn = turned(before.get(row.potId), { row, soonUtcMs });
    if (turn === null) return [];
    const because = noted.has(row.potId) ? "journal" : previous.forDay !== forDay ? "day-passed" : "weather";
    return [{ potId: row.potId, ...turn, because }];
  });
}

/** Deeds that begin within a day of the last plan count; later ones are left to their own brief. Chosen by us. */
const SOON_MS = 24 * 3_600_000;

function sinceUtcMs({ issuedAt }: Plan): number {
  return Date.parse(issuedAt);
}

/** What one pot's advice was and is, where that differs: its first deed, or else one of the day that came or went. */
function turned(
  was: PotPlan | undefined,
  { row, soonUtcMs }: { row: PotPlan; soonUtcMs: number },
): Pick<Change, "was" | "is"> | null {
  if (was === undefined) return null;
  if (was.action !== row.action) return { was: was.action, is: row.action };
  const [old, now] = [was, row].map((of) => actionsUntil(of, soonUtcMs));
  const came = now!.find((action) => !old!.includes(action));
  if (came !== undefined) return { was: was.action, is: came };
  const went = old!.find((action) => !now!.includes(action));
  return went === undefined ? null : { was: went, is: row.action };
}

function actionsUntil(row: PotPlan, untilUtcMs: number): Action[] {
  return [row as Deed, ...row.then]
    .filter(({ from }) => from === undefined || Date.parse(from) < untilUtcMs)
    .map(({ action }) => action);
}
