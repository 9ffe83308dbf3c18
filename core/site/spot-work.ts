import type { HoursReady } from "../weather/hours-ready.ts";
import { windFactorTo2m } from "../weather/wind-profile.ts";
import type { Site } from "./site.ts";
import type { Spot } from "./spot.ts";
import { sunShareByHour } from "./spot-light.ts";
import { type SunHours, sunHours } from "./sun-hours.ts";

/** What every pass over a spot's hours shares: the weather, the spot, and the terms that hold for all members. */
export interface SpotWork {
  readonly hours: HoursReady;
  readonly site: Site;
  readonly spot: Spot;
  readonly sun: SunHours;
  /** Share of direct sun by hour. */
  readonly sunShareFrac: Float64Array;
  /** Wind at the pots over wind at 10 m. */
  readonly windFactor: number;
  /** 1 in hours in which plants cool against the sky. */
  readonly isNight: Uint8Array;
}

/**
 * Sine of the sun's height below which leaves lose more than they gain: 5 degrees. Chosen by us; net radiation turns
 * some minutes to an hour before sunset and after sunrise.
 */
const NIGHT_SINE = Math.sin(Math.PI / 36);

export function spotWork(hours: HoursReady, site: Site, spot: Spot): SpotWork {
  const sun = sunHours(hours, site);
  return {
    hours,
    site,
    spot,
    sun,
    sunShareFrac: sunShareByHour({ ...hours, zone: site.zone }, spot),
    windFactor: windFactorTo2m(10) * spot.windFrac,
    isNight: nightHours(sun),
  };
}

function nightHours({ heightSine }: SunHours): Uint8Array {
  const isNight = new Uint8Array(heightSine.length);
  for (let hour = 0; hour < isNight.length; hour++) isNight[hour] = heightSine[hour]! < NIGHT_SINE ? 1 : 0;
  return isNight;
}

/** A column as long as all hours of all members. */
export function emptyColumn({ hours }: SpotWork): Float64Array {
  return new Float64Array(hours.hourCount * hours.memberCount);
}
