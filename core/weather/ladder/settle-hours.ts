import type { Site } from "../../site/site.ts";
import type { Weather } from "../weather.ts";
import { anchorBareDays } from "./anchor-bare-days.ts";
import { fillHumidity, fillWind } from "./fill-air.ts";
import { fillFromMembers, fillNormal, fillPast, knownHoursAhead } from "./fill-basics.ts";
import { fillCloud, fillLastCloud } from "./fill-cloud.ts";
import { fillSun } from "./fill-sun.ts";
import { mapHours } from "./reaching-now.ts";
import { hourOfNow, type WorkingHours, workingHours } from "./working-hours.ts";

export interface SettledHours extends WorkingHours {
  /** Hours from now that rest on a forecast; `hourCount` goes beyond them only on the last rung. */
  readonly knownHours: number;
}

/** With fewer known hours ahead than this a normal day of the season fills the rest of the horizon. Chosen by us. */
const LEAST_KNOWN_HOURS = 24;

/**
 * The weather's hours up to the horizon with every column filled by the ladder. Ahead, the axis ends where temperature
 * or rain ends: a long hole is not invented, unless there would be no day to plan at all.
 */
export function settleHours(
  weather: Weather,
  site: Site,
  ahead: { nowUtcMs: number; horizonHours: number },
): SettledHours {
  const nowHour = hourOfNow(weather, ahead.nowUtcMs);
  const whole = workingHours(weather, site, { nowHour, hourCount: nowHour + ahead.horizonHours });
  fillFromMembers(whole);
  const knownHours = knownHoursAhead(whole);
  const tooShort = knownHours < Math.min(LEAST_KNOWN_HOURS, ahead.horizonHours);
  const work = tooShort ? whole : cut(whole, nowHour + knownHours);
  fillPast(work);
  if (tooShort) fillNormal(work, nowHour + knownHours);
  fillWind(work);
  fillHumidity(work);
  fillCloud(work);
  fillSun(work);
  fillLastCloud(work);
  anchorBareDays(work);
  return { ...work, knownHours };
}

function cut(work: WorkingHours, hourCount: number): WorkingHours {
  return { ...work, hourCount, columns: mapHours(work.columns, (column) => column.slice(0, hourCount)) };
}
