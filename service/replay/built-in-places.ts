import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { DailyWeather, DayClimate } from "../../core/replay/hours/daily-weather.ts";
import { NEW_YORK_CLIMATE, SEATTLE_CLIMATE } from "../../core/replay/hours/day-climates.ts";
import type { Site } from "../../core/site/site.ts";
import { daysFromCsv } from "./days-from-csv.ts";

export interface BuiltInPlace {
  readonly id: string;
  readonly site: Site;
  readonly climate: DayClimate;
  /** Line of credit that stands wherever these days are used. */
  readonly credit: string;
}

const CREDIT =
  "Daily weather 2012 to 2015: NOAA National Centers for Environmental Information, public domain";

/**
 * Two towns whose real days of four years come with the program, from the Global Historical Climatology Network
 * [MENNE2012], as gathered in the open data of vega-datasets, which do not name New York's station. Works of the United States
 * government are in the public domain.
 */
export const BUILT_IN_PLACES: readonly BuiltInPlace[] = [
  {
    id: "seattle",
    site: {
      id: "seattle",
      name: "Seattle",
      latDeg: 47.45,
      lonDeg: -122.31,
      elevationM: 113,
      zone: "America/Los_Angeles",
    },
    climate: SEATTLE_CLIMATE,
    credit: CREDIT,
  },
  {
    id: "new-york",
    site: {
      id: "new-york",
      name: "New York",
      latDeg: 40.75,
      lonDeg: -73.9,
      elevationM: 5,
      zone: "America/New_York",
    },
    climate: NEW_YORK_CLIMATE,
    credit: CREDIT,
  },
];

/** The days that come with the program for one of its places. */
export function daysOfPlace({ id, site, climate }: BuiltInPlace): DailyWeather {
  const text = readFileSync(join(import.meta.dirname, "days", `${id}.csv`), "utf8");
  const read = daysFromCsv(text);
  if (!read.ok) throw new Error(`days of ${id}: ${JSON.stringify(read.problems)}`);
  return { site, climate, ...read.value };
}
