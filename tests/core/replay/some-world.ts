import type { DailyWeather } from "../../../core/replay/hours/daily-weather.ts";
import { type SeedWorld, worldOfSeed } from "../../../core/replay/season/world-of-seed.ts";
import { gardenAt } from "../../../core/replay/stage/garden.ts";
import { BUILT_IN_PLACES, daysOfPlace } from "../../../service/replay/built-in-places.ts";

/** Real days of a place, so many from a day of the data on. */
export function realDays(placeId: string, of: { fromDay: number; count: number }): DailyWeather {
  const place = BUILT_IN_PLACES.find(({ id }) => id === placeId);
  if (place === undefined) throw new Error(`no place ${placeId}`);
  const daily = daysOfPlace(place);
  const cut = (column: Float64Array) => column.slice(of.fromDay, of.fromDay + of.count);
  const firstMs = Date.parse(`${daily.firstDay}T00:00:00Z`) + of.fromDay * 86_400_000;
  return {
    ...daily,
    firstDay: new Date(firstMs).toISOString().slice(0, 10) as DailyWeather["firstDay"],
    rainMm: cut(daily.rainMm),
    tempMinC: cut(daily.tempMinC),
    tempMaxC: cut(daily.tempMaxC),
    windMPerS: cut(daily.windMPerS),
  };
}

/** The garden, or some of its groups, on some days of New York's spring and summer of 2013. */
export function springWorld(of: { groupIds: readonly string[]; days?: number; seed?: number }): SeedWorld {
  const daily = realDays("new-york", { fromDay: 366 + 110, count: of.days ?? 90 });
  const stage = gardenAt(daily.site, of.groupIds);
  return worldOfSeed({ daily, stage, seed: of.seed ?? 1, settings: { tripWorth: 4 } });
}
