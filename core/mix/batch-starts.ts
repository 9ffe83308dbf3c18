import type { WorkWindow } from "../plan/plan.ts";
import { HOUR_MS } from "../weather/weather.ts";
import type { CareNote } from "./care-notes.ts";

/** A task and when to begin it, so that it is done when the work window opens. */
export interface Start {
  readonly task: CareNote;
  readonly startUtcMs: number;
  readonly windowFromUtcMs: number;
}

/** Share of the courses from which hours are dry enough to soak for them a day before. Chosen by us. */
const SURE_FRAC = 0.9;

/**
 * The window to prepare for: the first that is all but sure to be dry, else the surest, the first of equals; none
 * of none. What was soaked for hours that are then rained off was soaked for nothing.
 */
export function windowToPrepareFor(windows: readonly WorkWindow[]): WorkWindow | undefined {
  const inOrder = [...windows].sort((a, b) => Date.parse(a.from) - Date.parse(b.from));
  const surestFrac = Math.max(0, ...inOrder.map(({ dryShareFrac }) => dryShareFrac));
  return inOrder.find(({ dryShareFrac }) => dryShareFrac >= Math.min(SURE_FRAC, surestFrac));
}

/**
 * What to begin when for the window to prepare for among those that leave time for the longest task that is a matter of hours.
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
  const window = windowToPrepareFor(of.windows.filter(({ from }) => Date.parse(from) - leadMs >= nowUtcMs));
  if (window === undefined) return [];
  const windowFromUtcMs = Date.parse(window.from);
  return tasks.map((task) => ({ task, startUtcMs: windowFromUtcMs - task.hours * HOUR_MS, windowFromUtcMs }));
}
