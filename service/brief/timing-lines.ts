import type { BriefTiming } from "./brief-value.ts";
import type { Naming } from "./naming.ts";

/** That the brief came late, and that days before it had none: one line each. */
export function timingLines(timing: BriefTiming | undefined, { words, plan }: Naming): string[] {
  if (!timing) return [];
  const { lateUtcMs, dueUtcMs, missedDays } = timing;
  const lines: string[] = [];
  if (lateUtcMs !== null)
    lines.push(
      words.say("brief.late", {
        madeTime: words.clock(lateUtcMs, plan.zone),
        dueTime: words.clock(dueUtcMs, plan.zone),
      }),
    );
  if (missedDays.length > 0)
    lines.push(
      words.say("brief.missed", {
        missedCount: missedDays.length,
        firstDay: missedDays[0],
        lastDay: missedDays.at(-1),
      }),
    );
  return lines;
}
