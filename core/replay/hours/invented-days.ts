import type { CalendarDay, Site } from "../../site/site.ts";
import { seededRandom } from "../../weather/seeded-random.ts";
import type { DailyWeather, DayClimate } from "./daily-weather.ts";

/** What a place's days are like in one season of the year. */
export interface SeasonOfDays {
  /** Chance of a wet day after a wet one and after a dry one, and mean rain of a wet day. */
  readonly wetAfterWetFrac: number;
  readonly wetAfterDryFrac: number;
  readonly wetDayMm: number;
}

/** Enough of a climate to invent its days. */
export interface InventedClimate {
  readonly climate: DayClimate;
  /** By month, 0 to 11. */
  seasonOf(month: number): SeasonOfDays;
  /** Mean of minimum and maximum at midwinter and midsummer, °C, and when midsummer is, day of the year. */
  readonly minimumC: readonly [winter: number, summer: number];
  readonly maximumC: readonly [winter: number, summer: number];
  readonly midsummerDay: number;
  readonly windMPerS: number;
}

/** Departures of a day from the season, °C, and how far they go on. Chosen by us. */
const ANOMALY_C = 2.2;
const DAY_TO_DAY = 0.65;
/** A wet day is cooler by day and milder by night, °C. Chosen by us. */
const WET_COOLER_C = 2;
const WET_MILDER_C = 0.7;
/** Shape of amounts on wet days: longer in the tail than exponential. */
const RAIN_SHAPE = 0.75;
const RAIN_MEAN_OVER_SCALE = 1.1906;
const WIND_SCATTER = 0.35;
const LEAST_RAIN_MM = 0.3;
const YEAR_DAYS = 365.25;

/** Invented days: nobody measured them. A two-state chain of wet and dry days, a season's course with wandering departures. */
export function inventedDays(of: {
  site: Site;
  invented: InventedClimate;
  firstDay: CalendarDay;
  dayCount: number;
  seed: number;
}): DailyWeather {
  const { invented, firstDay, dayCount } = of;
  const random = seededRandom(of.seed);
  const column = () => new Float64Array(dayCount);
  const out = { rainMm: column(), tempMinC: column(), tempMaxC: column(), windMPerS: column() };
  let wet = false;
  let anomaly = 0;
  for (let d = 0; d < dayCount; d++) {
    const date = new Date(Date.parse(`${firstDay}T00:00:00Z`) + d * 86_400_000);
    const season = invented.seasonOf(date.getUTCMonth());
    wet = random.uniform() < (wet ? season.wetAfterWetFrac : season.wetAfterDryFrac);
    anomaly = DAY_TO_DAY * anomaly + Math.sqrt(1 - DAY_TO_DAY ** 2) * ANOMALY_C * random.normal();
    const warmth = warmthOf(invented, date);
    const amount = -Math.log(1 - random.uniform());
    out.rainMm[d] = wet
      ? LEAST_RAIN_MM + (season.wetDayMm / RAIN_MEAN_OVER_SCALE) * amount ** (1 / RAIN_SHAPE)
      : 0;
    const minimumC = between(invented.minimumC, warmth) + anomaly + (wet ? WET_MILDER_C : 0);
    const maximumC = between(invented.maximumC, warmth) + anomaly - (wet ? WET_COOLER_C : 0);
    out.tempMinC[d] = minimumC;
    out.tempMaxC[d] = Math.max(minimumC + 1, maximumC);
    out.windMPerS[d] = invented.windMPerS * Math.exp(WIND_SCATTER * random.normal());
  }
  return { site: of.site, climate: invented.climate, firstDay, ...out };
}

/** 0 at midwinter, 1 at midsummer. */
function warmthOf({ midsummerDay }: InventedClimate, date: Date): number {
  const day = (date.getTime() - Date.UTC(date.getUTCFullYear(), 0, 1)) / 86_400_000;
  return 0.5 + 0.5 * Math.cos((2 * Math.PI * (day - midsummerDay)) / YEAR_DAYS);
}

function between([low, high]: readonly [number, number], share: number): number {
  return low + share * (high - low);
}
