import type { WorkWindow } from "../plan/plan.ts";
import { HOUR_MS } from "../weather/weather.ts";
import type { CareNote } from "./care-notes.ts";

/** A task and when to begin it, so that it is done when the work window opens. */
export interface Start {
  readonly task: CareNote;
  readonly startUtcMs: number;
  readonly windowFromUtcMs: number;
}

/**
 * What to begin when for the first work window that leaves time for the longest task that is a matter of hours.
 * Letting compost mature is a matter of weeks: it is told as a note and not waited for.
 */
export function startsFor(of: {
  care: readonly CareNote[];
  windows: readonly WorkWindow[];
  nowUtcMs: number | undefined;
}): Start[] {
  const tasks = of.care.filter(({ code, hours }) => hours > 0 && code !== "let-mature");
  const { nowUtcMs } = of;
  if (nowUtcMs === undefined) return [];
  const leadMs = Math.max(0, ...tasks.map(({ hours }) => hours)) * HOUR_MS;
  const opens = of.windows.map(({ from }) => Date.parse(from)).sort((a, b) => a - b);
  const windowFromUtcMs = opens.find((from) => from - leadMs >= nowUtcMs);
  if (windowFromUtcMs === undefined) return [];
  return tasks.map((task) => ({ task, startUtcMs: windowFromUtcMs - task.hours * HOUR_MS, windowFromUtcMs }));
}
