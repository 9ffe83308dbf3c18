/** A run of hours on an axis; `toHour` exclusive. */
export interface HourRun {
  readonly fromHour: number;
  readonly toHour: number;
}

/**
 * Runs of hours in which something holds. Breaks of up to `mostBreakHours` do not end a run; a run begins and ends with
 * an hour in which it holds.
 */
export function runsOf(
  hourCount: number,
  rule: { holds: (hour: number) => boolean; mostBreakHours: number },
): HourRun[] {
  const runs: { fromHour: number; toHour: number }[] = [];
  for (let hour = 0; hour < hourCount; hour++) {
    if (!rule.holds(hour)) continue;
    const last = runs.at(-1);
    if (last && hour - last.toHour <= rule.mostBreakHours) last.toHour = hour + 1;
    else runs.push({ fromHour: hour, toHour: hour + 1 });
  }
  return runs;
}
