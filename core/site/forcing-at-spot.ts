import type { HoursReady } from "../weather/hours-ready.ts";
import { airAtSpotC } from "./air-at-spot.ts";
import { et0AtSpotMm } from "./et0-at-spot.ts";
import type { SpotForcing } from "./forcing.ts";
import { leafAtSpotC } from "./leaf-at-spot.ts";
import { lightAtSpotMjPerM2 } from "./light-at-spot.ts";
import { openRainFrac, rainAtSpotMm } from "./rain-at-spot.ts";
import type { Site } from "./site.ts";
import type { Spot } from "./spot.ts";
import { spotWork } from "./spot-work.ts";

/**
 * What the weather does to pots at one spot, hour by hour and member by member. One pass a quantity, members
 * innermost; the passes over members allocate nothing but the columns themselves. The sun's course, which all members
 * share, leaves some small garbage by hour.
 *
 * Shape: hours of n hours and m members -> columns of n x m; the hours are not changed.
 */
export function forcingAtSpot(hours: HoursReady, site: Site, spot: Spot): SpotForcing {
  const work = spotWork(hours, site, spot);
  const airC = airAtSpotC(work);
  const lightMjPerM2 = lightAtSpotMjPerM2(work);
  return {
    spotId: spot.id,
    startUtcMs: hours.startUtcMs,
    hourCount: hours.hourCount,
    memberCount: hours.memberCount,
    et0Mm: et0AtSpotMm(work, { airC, lightMjPerM2 }),
    rainMm: rainAtSpotMm(work),
    tempC: airC,
    plantTempC: leafAtSpotC(work, airC),
    lightMjPerM2,
    gustMPerS: hours.gustMPerS.map((gust) => gust * work.windFactor),
    ...(hours.rainDoubt === undefined
      ? {}
      : { rainDoubt: { ...hours.rainDoubt, openFrac: openRainFrac(spot) } }),
  };
}
