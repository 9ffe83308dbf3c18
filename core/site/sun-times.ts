import { radFromDeg } from "../weather/sun-geometry.ts";
import { sunPosition } from "../weather/sun-position.ts";
import { HOUR_MS } from "../weather/weather.ts";
import { utcMsOfLocal } from "./local-days.ts";
import type { CalendarDay, Site } from "./site.ts";

/** The sun's day at a site. Without a rise and a set, `always` says whether it stays up or down. */
export type SunTimes = { readonly noonUtcMs: number } & (
  | { readonly riseUtcMs: number; readonly setUtcMs: number }
  | { readonly always: "up" | "down" }
);

/** Centre of the sun at rise and set, degrees: 34' of refraction and 16' of half width. Common practice. */
const RISE_HEIGHT_DEG = -0.833;

/**
 * Sunrise, solar noon and sunset on a local day, over a level horizon at sea level.
 * The rise belongs to the noon of the day, so that it may lie on the day before where clocks are far from the sun.
 */
export function sunTimes(day: CalendarDay, site: Site): SunTimes {
  const noonUtcMs = solarNoonUtcMs(utcMsOfLocal(day, 12, site.zone), site.lonDeg);
  const rise = crossingUtcMs({ noonUtcMs, latDeg: site.latDeg, side: -1 });
  const set = crossingUtcMs({ noonUtcMs, latDeg: site.latDeg, side: 1 });
  if (typeof rise === "number" && typeof set === "number") {
    return { noonUtcMs, riseUtcMs: rise, setUtcMs: set };
  }
  return { noonUtcMs, always: typeof rise === "string" ? rise : (set as "up" | "down") };
}

/** The solar noon nearest to an instant; twice, because the equation of time moves by half a minute a day. */
function solarNoonUtcMs(nearUtcMs: number, lonDeg: number): number {
  let noon = nearUtcMs;
  for (let round = 0; round < 2; round++) {
    const clock = (noon / HOUR_MS) % 24;
    const ahead = 12 - (clock + lonDeg / 15 + sunPosition(noon).equationOfTimeHours);
    noon += (ahead - 24 * Math.round(ahead / 24)) * HOUR_MS;
  }
  return noon;
}

/** Rise (side -1) or set (side 1); twice, because the sun moves on while the hours pass. */
function crossingUtcMs(of: { noonUtcMs: number; latDeg: number; side: -1 | 1 }): number | "up" | "down" {
  const latRad = radFromDeg(of.latDeg);
  const noonEquation = sunPosition(of.noonUtcMs).equationOfTimeHours;
  let at = of.noonUtcMs;
  for (let round = 0; round < 3; round++) {
    const { declinationRad, equationOfTimeHours } = sunPosition(at);
    const cosine =
      (Math.sin(radFromDeg(RISE_HEIGHT_DEG)) - Math.sin(latRad) * Math.sin(declinationRad)) /
      (Math.cos(latRad) * Math.cos(declinationRad));
    if (cosine > 1) return "down";
    if (cosine < -1) return "up";
    const hours = (12 / Math.PI) * Math.acos(cosine);
    at = of.noonUtcMs + (of.side * hours + noonEquation - equationOfTimeHours) * HOUR_MS;
  }
  return at;
}
