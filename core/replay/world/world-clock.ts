import type { SpotForcing } from "../../site/forcing.ts";
import { localHour } from "../../site/local-days.ts";
import type { Site } from "../../site/site.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { DayAxis } from "../hours/day-axis.ts";

/** The world's hours: the true weather at each spot, and when its days begin and are closed. */
export interface WorldClock {
  readonly site: Site;
  readonly startUtcMs: number;
  readonly spots: readonly SpotForcing[];
  /** 1 in the hour with which a day is closed: the late morning, when the coldest hour is past. */
  readonly closes: Uint8Array;
  /** First hour of each day's round. */
  readonly roundHour: Int32Array;
}

/** The morning round begins at this local hour. */
export const ROUND_CLOCK_HOUR = 7;
/** The day is closed at this local hour, as the planner's days are. */
const CLOSING_CLOCK_HOUR = 10;

export function worldClock(axis: DayAxis, spots: readonly SpotForcing[]): WorldClock {
  const closes = new Uint8Array(axis.hourCount);
  const roundHour = new Int32Array(axis.days.length);
  for (const [d, { fromHour, toHour }] of axis.days.entries()) {
    for (let hour = fromHour; hour < toHour; hour++) {
      const clock = Math.floor(localHour(axis.startUtcMs + hour * HOUR_MS, axis.site.zone));
      if (clock === ROUND_CLOCK_HOUR) roundHour[d] = hour;
      if (clock === CLOSING_CLOCK_HOUR - 1) closes[hour] = 1;
    }
  }
  return { site: axis.site, startUtcMs: axis.startUtcMs, spots, closes, roundHour };
}
