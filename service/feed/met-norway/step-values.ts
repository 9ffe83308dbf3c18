import { dewPointFromHumidityC } from "../../../core/weather/dew-point.ts";
import type { FallbackStep } from "./answer-schema.ts";
import { weatherCodeOfSymbol } from "./symbol-code.ts";

/** One step in our names and units; NaN is unknown. */
export interface StepValues {
  readonly utcMs: number;
  readonly tempC: number;
  readonly dewPointC: number;
  readonly windMPerS: number;
  readonly gustMPerS: number;
  readonly cloudFrac: number;
  readonly nextHour: Ahead | null;
  readonly nextSixHours: (Ahead & { readonly tempMinC: number; readonly tempMaxC: number }) | null;
}

export interface Ahead {
  readonly rainMm: number;
  readonly rainChanceFrac: number;
  readonly weatherCode: number;
}

type Details = Readonly<Record<string, number | null | undefined>>;
type Units = Readonly<Record<string, string>>;

/** The unit in which each value is documented, and the factor into ours. */
const DOCUMENTED: Readonly<Record<string, readonly [unit: string, factor: number]>> = {
  air_temperature: ["celsius", 1],
  air_temperature_min: ["celsius", 1],
  air_temperature_max: ["celsius", 1],
  dew_point_temperature: ["celsius", 1],
  relative_humidity: ["%", 0.01],
  cloud_area_fraction: ["%", 0.01],
  wind_speed: ["m/s", 1],
  wind_speed_of_gust: ["m/s", 1],
  precipitation_amount: ["mm", 1],
  probability_of_precipitation: ["%", 0.01],
};

/** Names of the values that came in a unit other than the documented one; these are not read. */
export function strangeUnits(units: Units): string[] {
  return Object.keys(DOCUMENTED).filter(
    (name) => units[name] !== undefined && units[name] !== DOCUMENTED[name]![0],
  );
}

export function stepValues(step: FallbackStep, units: Units): StepValues {
  const { instant, next_1_hours: nextHour, next_6_hours: nextSix } = step.data;
  const read = (details: Details, name: string) => oursFrom(details, { name, units });
  const ahead = (block: NonNullable<typeof nextHour>): Ahead => ({
    rainMm: read(block.details ?? {}, "precipitation_amount"),
    rainChanceFrac: read(block.details ?? {}, "probability_of_precipitation"),
    weatherCode: weatherCodeOfSymbol(block.summary?.symbol_code),
  });
  const tempC = read(instant.details, "air_temperature");
  const dewPointC = read(instant.details, "dew_point_temperature");
  const humidityFrac = read(instant.details, "relative_humidity");
  return {
    utcMs: Date.parse(step.time),
    tempC,
    dewPointC: Number.isNaN(dewPointC) ? dewPointFromHumidityC(tempC, humidityFrac) : dewPointC,
    windMPerS: read(instant.details, "wind_speed"),
    gustMPerS: read(instant.details, "wind_speed_of_gust"),
    cloudFrac: read(instant.details, "cloud_area_fraction"),
    nextHour: nextHour === undefined ? null : ahead(nextHour),
    nextSixHours:
      nextSix === undefined
        ? null
        : {
            ...ahead(nextSix),
            tempMinC: read(nextSix.details ?? {}, "air_temperature_min"),
            tempMaxC: read(nextSix.details ?? {}, "air_temperature_max"),
          },
  };
}

function oursFrom(details: Details, of: { name: string; units: Units }): number {
  const [unit, factor] = DOCUMENTED[of.name]!;
  const value = details[of.name];
  if (typeof value !== "number" || (of.units[of.name] ?? unit) !== unit) return Number.NaN;
  return value * factor + 0;
}
