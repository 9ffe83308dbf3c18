import { extraterrestrialHourMjPerM2, hourAngleRad, sineOfSunHeight } from "../weather/extraterrestrial.ts";
import { clearSkyMjPerM2 } from "../weather/shortwave.ts";
import { sunsetAngleRad } from "../weather/sun-geometry.ts";
import { HOUR_MS } from "../weather/weather.ts";
import { dayOfYear } from "./day-of-year.ts";
import type { Site } from "./site.ts";

/** What the sun does over a site, by hour: the terms that all members and all spots share. */
export interface SunHours {
  readonly extraterrestrialMjPerM2: Float64Array;
  readonly clearSkyMjPerM2: Float64Array;
  /** Sine of the sun's height in the middle of the hour; negative below the horizon. */
  readonly heightSine: Float64Array;
  /** 1 in the hour whose cloud ratio the coming night takes over. */
  readonly lateAfternoon: Uint8Array;
}

/** The late afternoon lies so far before sunset, rad. [FAO56 ch. 4, calculation procedure for hourly steps] */
const WINDOW_FROM_RAD = 0.79;
const WINDOW_TO_RAD = 0.52;

interface Axis {
  readonly startUtcMs: number;
  readonly hourCount: number;
}

// Every spot of a site asks for the same axis; the terms follow from both alone, so they are reckoned once.
const reckoned = new WeakMap<Axis, { readonly site: Site; readonly terms: SunHours }>();

/** Sun terms for every hour of an axis, shared by all who ask for it: not to be written to. */
export function sunHours(axis: Axis, site: Site): SunHours {
  const known = reckoned.get(axis);
  if (known?.site === site) return known.terms;
  const terms = reckonTerms(axis, site);
  reckoned.set(axis, { site, terms });
  return terms;
}

/** The day number is that of the site's own solar day. */
function reckonTerms(axis: Axis, site: Site): SunHours {
  const { latDeg, lonDeg, elevationM } = site;
  const terms = emptyTerms(axis.hourCount);
  for (let hour = 0; hour < axis.hourCount; hour++) {
    const startMs = axis.startUtcMs + hour * HOUR_MS;
    const hourStartUtc = (startMs / HOUR_MS) % 24;
    const day = dayOfYear(startMs + (0.5 + lonDeg / 15) * HOUR_MS);
    const ra = extraterrestrialHourMjPerM2({ latDeg, lonDeg, dayOfYear: day, hourStartUtc });
    const angle = hourAngleRad({ lonDeg, dayOfYear: day, utcHour: hourStartUtc + 0.5 });
    const beforeSunset = sunsetAngleRad({ latDeg, dayOfYear: day }) - angle;
    terms.extraterrestrialMjPerM2[hour] = ra;
    terms.clearSkyMjPerM2[hour] = clearSkyMjPerM2({ extraterrestrialMjPerM2: ra, elevationM });
    terms.heightSine[hour] = sineOfSunHeight({ latDeg, dayOfYear: day, hourAngleRad: angle });
    terms.lateAfternoon[hour] =
      ra > 0 && beforeSunset >= WINDOW_TO_RAD && beforeSunset <= WINDOW_FROM_RAD ? 1 : 0;
  }
  return terms;
}

function emptyTerms(hourCount: number): SunHours {
  return {
    extraterrestrialMjPerM2: new Float64Array(hourCount),
    clearSkyMjPerM2: new Float64Array(hourCount),
    heightSine: new Float64Array(hourCount),
    lateAfternoon: new Uint8Array(hourCount),
  };
}
