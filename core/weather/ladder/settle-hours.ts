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

/*
 * The ladder, best rung first. Each rung below the first is told in the plan with what it costs in certainty.
 *
 * temperature   feed; a hole of up to five hours bridged; mean of the ensemble; before now the same clock hours of the
 *               days around; ahead a normal day of the season, if less than a day is known
 * rain          feed; a hole of one hour bridged; mean of the ensemble; before now none, until a gauge says otherwise
 * wind          feed; bridged; mean of the ensemble; 2 m/s at 2 m
 * humidity      feed; bridged; mean of the ensemble; lowest temperature of the 24 hours around less 3 degrees
 * cloud         feed; bridged; weather code; the sun's own ratio while it is high, carried through the night; half
 * sun           feed; mean of the ensemble; the sun behind the feed's own ET0; cloud; temperature range
 * all three     of wind, humidity and sun unknown: the day's sum is that of Hargreaves and Samani over its sun hours
 * members       ensemble, widened where it is too sure; the single forecast with published errors by lead day
 *
 * A fallback feed without sun, dew point or gusts enters at the rungs of what it does tell.
 */

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
  if (tooShort) fillNormal(work);
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
