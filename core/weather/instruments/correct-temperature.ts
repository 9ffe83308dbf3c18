import type { JournalEntry } from "../../journal/entry.ts";
import type { SettledHours } from "../ladder/settle-hours.ts";
import { minimumDifferenceC } from "./minimum-bias.ts";
import { readingSpan, siteReadings } from "./reading-span.ts";

/**
 * Moves the past temperatures of each thermometer reading's span so that they pass through what was read: the coolest
 * hour by the difference of the minimum, the warmest by that of the maximum, the hours between in proportion. Dew point
 * is held to the air. Columns are changed.
 */
export function correctTemperature(settled: SettledHours, journal: readonly JournalEntry[]): void {
  const { tempC, dewPointC } = settled.columns;
  for (const { atUtcMs, body } of siteReadings(journal, "thermometer")) {
    const span = readingSpan(settled, { atUtcMs, ...body });
    const atMin = minimumDifferenceC(settled, { atUtcMs, ...body });
    if (!span || atMin === null) continue;
    const temps = tempC.subarray(span.fromHour, span.toHour);
    const least = temps.reduce((a, b) => Math.min(a, b));
    const most = temps.reduce((a, b) => Math.max(a, b));
    const atMax = body.maxC === undefined ? 0 : body.maxC - most;
    const range = Math.max(0.1, most - least);
    for (let hour = span.fromHour; hour < span.toHour; hour++) {
      const warmFrac = (tempC[hour]! - least) / range;
      tempC[hour]! += (1 - warmFrac) * atMin + warmFrac * atMax;
      dewPointC[hour] = Math.min(dewPointC[hour]!, tempC[hour]!);
    }
  }
}
