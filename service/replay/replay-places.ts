import type { DailyWeather } from "../../core/replay/hours/daily-weather.ts";
import { MONSOON_CLIMATE, NEW_YORK_CLIMATE } from "../../core/replay/hours/day-climates.ts";
import { type InventedClimate, inventedDays } from "../../core/replay/hours/invented-days.ts";
import type { CalendarDay, Site } from "../../core/site/site.ts";
import { BUILT_IN_PLACES, daysOfPlace } from "./built-in-places.ts";

/** A place whose days can be replayed. */
export interface ReplayPlace {
  readonly id: string;
  readonly name: string;
  readonly credit: string;
  /** Whether somebody measured its days. */
  readonly real: boolean;
  days(): DailyWeather;
}

const FIRST_DAY = "2012-01-01" as CalendarDay;
const DAY_COUNT = 1461;
const INVENTED_CREDIT = "Invented days: nobody measured them, and no place has them";

/** Rain of a monsoon coast: wet and dry spells and amounts as at Guangzhou, 2010 to 2015. [HOURLYRAIN] Warmth is chosen by us. */
const MONSOON: InventedClimate = {
  climate: MONSOON_CLIMATE,
  seasonOf: (month) =>
    month >= 3 && month <= 8
      ? { wetAfterWetFrac: 0.62, wetAfterDryFrac: 0.3, wetDayMm: 15 }
      : { wetAfterWetFrac: 0.5, wetAfterDryFrac: 0.11, wetDayMm: 8 },
  minimumC: [15, 26],
  maximumC: [26, 33],
  midsummerDay: 190,
  windMPerS: 2.6,
};

/** Dry summers and mild wet winters. All chosen by us. */
const DRY_SUMMER: InventedClimate = {
  climate: { ...NEW_YORK_CLIMATE, id: "dry-summer", dewUnderMinimumC: -3 },
  seasonOf: (month) =>
    month >= 4 && month <= 8
      ? { wetAfterWetFrac: 0.25, wetAfterDryFrac: 0.03, wetDayMm: 6 }
      : { wetAfterWetFrac: 0.5, wetAfterDryFrac: 0.18, wetDayMm: 9 },
  minimumC: [6, 22],
  maximumC: [14, 33],
  midsummerDay: 205,
  windMPerS: 3.2,
};

const MONSOON_SITE: Site = {
  id: "invented-monsoon",
  name: "Invented monsoon coast",
  latDeg: 22.3,
  lonDeg: 91.8,
  elevationM: 10,
  zone: "Asia/Dhaka",
};

const DRY_SUMMER_SITE: Site = {
  id: "invented-dry-summer",
  name: "Invented dry-summer coast",
  latDeg: 37.2,
  lonDeg: 23.1,
  elevationM: 30,
  zone: "Europe/Athens",
};

/** Two real towns and two invented coasts. */
export const REPLAY_PLACES: readonly ReplayPlace[] = [
  ...BUILT_IN_PLACES.map((place) => ({
    id: place.id,
    name: place.site.name,
    credit: place.credit,
    real: true,
    days: () => daysOfPlace(place),
  })),
  invented(MONSOON_SITE, { climate: MONSOON, seed: 401 }),
  invented(DRY_SUMMER_SITE, { climate: DRY_SUMMER, seed: 402 }),
];

function invented(site: Site, of: { climate: InventedClimate; seed: number }): ReplayPlace {
  return {
    id: site.id,
    name: site.name,
    credit: INVENTED_CREDIT,
    real: false,
    days: () =>
      inventedDays({ site, invented: of.climate, firstDay: FIRST_DAY, dayCount: DAY_COUNT, seed: of.seed }),
  };
}
