import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { DayOutline } from "../../../core/plan/plan.ts";
import type { Settings } from "../../../core/plan/settings.ts";
import type { Site } from "../../../core/site/site.ts";
import { dayOutlines } from "../../../core/weather/day-outline.ts";
import { weatherReady } from "../../../core/weather/ready.ts";
import type { Weather } from "../../../core/weather/weather.ts";

const FORTNIGHT_HOURS = 14 * 24;

/** The sky by day as far as the forecast goes, two weeks at most: the plan's own days end with its horizon. */
export function fortnight(input: {
  weather: Weather;
  site: Site;
  journal: readonly JournalEntry[];
  nowUtcMs: number;
  settings: Settings;
}): DayOutline[] {
  const { cloudSize, seed } = input.settings;
  const ready = weatherReady({ ...input, cloudSize, seed, horizonHours: FORTNIGHT_HOURS });
  const knownDays = Math.ceil(ready.knownHours / 24);
  return dayOutlines(ready, input.site).slice(0, Math.max(1, knownDays));
}
