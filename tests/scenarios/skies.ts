import type { Sky, SkyDay } from "./scenario-weather.ts";

export const MILD: SkyDay = { minC: 14, maxC: 24, cloudFrac: 0.3 };
export const WARM: SkyDay = { minC: 18, maxC: 28, cloudFrac: 0.2 };
export const HOT: SkyDay = { minC: 21, maxC: 35, cloudFrac: 0.05 };
export const SCORCHING: SkyDay = { minC: 25, maxC: 44, cloudFrac: 0 };
export const COOL: SkyDay = { minC: 8, maxC: 15, cloudFrac: 0.6 };
export const COLD: SkyDay = { minC: 4, maxC: 11, cloudFrac: 0.2, windMPerS: 1 };
export const FROST: SkyDay = { minC: -2, maxC: 7, cloudFrac: 0, windMPerS: 0.8 };
export const GREY_WET: SkyDay = { minC: 12, maxC: 17, cloudFrac: 1, rain: { mm: 12, from: 8, hours: 12 } };
export const COLD_WET: SkyDay = { minC: 5, maxC: 10, cloudFrac: 1, rain: { mm: 10, from: 8, hours: 10 } };
export const DOWNPOUR: SkyDay = {
  minC: 17,
  maxC: 27,
  cloudFrac: 0.8,
  gustMPerS: 9,
  rain: { mm: 40, from: 15, hours: 3, chance: 0.9 },
};
export const STORM: SkyDay = { ...DOWNPOUR, thunder: [15, 16, 17] };
export const GALE: SkyDay = { minC: 13, maxC: 20, windMPerS: 11, gustMPerS: 24, cloudFrac: 0.7 };

/** The same day before and after today. */
export function settled(day: SkyDay): Sky {
  return { past: day, ahead: [day] };
}

/** What it was like, then the days from today on; the last goes on. */
export function after(past: SkyDay, ...ahead: SkyDay[]): Sky {
  return { past, ahead };
}
