import type { DayClimate, RainHoursLaw } from "./daily-weather.ts";

/*
 * All figures are our reckoning from open hourly reports of airport stations: Seattle 2014, New York 2013, Guangzhou
 * April to September of 2010 to 2015. [HOURLYRAIN] A wet hour has 0.25 mm or more.
 */

const SEATTLE: RainHoursLaw = {
  wetHours: { factor: 2.61, power: 0.55 },
  maxHourMm: { factor: 0.57, power: 0.68 },
  scatterFactor: 1.4,
  spells: 2.7,
};

const NEW_YORK_WARM: RainHoursLaw = {
  wetHours: { factor: 1.53, power: 0.45 },
  maxHourMm: { factor: 0.81, power: 0.78 },
  scatterFactor: 1.6,
  spells: 1.7,
};

const NEW_YORK_COLD: RainHoursLaw = {
  wetHours: { factor: 2.65, power: 0.47 },
  maxHourMm: { factor: 0.5, power: 0.75 },
  scatterFactor: 1.5,
  spells: 1.8,
};

const MONSOON: RainHoursLaw = {
  wetHours: { factor: 1.2, power: 0.43 },
  maxHourMm: { factor: 0.7, power: 0.91 },
  scatterFactor: 1.6,
  spells: 1.8,
};

/** April, May and October lie between the seasons that were reckoned; each goes with the nearer one. */
const isWarm = (month: number) => month >= 4 && month <= 8;

/** Rain all the year, most of it long and light. */
export const SEATTLE_CLIMATE: DayClimate = {
  id: "seattle",
  dewUnderMinimumC: -2.1,
  wind: { swingFrac: 0.16, peakHour: 15.2 },
  coastal: false,
  rainLaw: () => SEATTLE,
};

/** Showers in summer, long rain in winter. Dew point and wind of LaGuardia. */
export const NEW_YORK_CLIMATE: DayClimate = {
  id: "new-york",
  dewUnderMinimumC: -5.1,
  wind: { swingFrac: 0.17, peakHour: 14.4 },
  coastal: true,
  rainLaw: (month) => (isWarm(month) ? NEW_YORK_WARM : NEW_YORK_COLD),
};

/** Monsoon showers. Dew point and wind chosen by us for a humid coast: no hourly series of one was found. */
export const MONSOON_CLIMATE: DayClimate = {
  id: "monsoon",
  dewUnderMinimumC: -1,
  wind: { swingFrac: 0.25, peakHour: 14.5 },
  coastal: true,
  rainLaw: () => MONSOON,
};
