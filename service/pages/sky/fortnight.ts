import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { DayOutline, Plan } from "../../../core/plan/plan.ts";
import type { Settings } from "../../../core/plan/settings.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { Site } from "../../../core/site/site.ts";
import { dayOutlines } from "../../../core/weather/day-outline.ts";
import { weatherReady } from "../../../core/weather/ready.ts";
import type { Weather } from "../../../core/weather/weather.ts";

const FORTNIGHT_HOURS = 14 * 24;

/**
 * The sky by day as far as the forecast goes, two weeks at most. Days of today's plan are told as it has them, for
 * every page tells them so; those beyond its horizon are reckoned here.
 */
export function fortnight(input: {
  plan: Plan | null;
  weather: Weather;
  site: Site;
  journal: readonly JournalEntry[];
  nowUtcMs: number;
  settings: Settings;
}): DayOutline[] {
  const { cloudSize, seed } = input.settings;
  const ready = weatherReady({ ...input, cloudSize, seed, horizonHours: FORTNIGHT_HOURS });
  const knownDays = Math.ceil(ready.knownHours / 24);
  const known = dayOutlines(ready, input.site).slice(0, Math.max(1, knownDays));
  const today = calendarDay(input.nowUtcMs, input.site.zone);
  const planned = input.plan?.forDay === today ? input.plan.days : [];
  const lastPlanned = planned.at(-1)?.day ?? "";
  return [...planned, ...known.filter(({ day }) => day > lastPlanned)];
}
