import type { InventedCourse, InventedHours, InventedWeather } from "./invented-weather-type.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

export type Parameters = Readonly<Record<string, string | undefined>>;

/** An answer of the forecast or ensemble kind, or the words with which the question is refused. */
export type HourlyReply = { readonly body: Record<string, unknown> } | { readonly refusal: string };

interface Series {
  readonly unit: string;
  readonly decimals: number;
  readonly at: (course: InventedCourse & Partial<InventedHours>, j: number) => number | undefined;
}

const WIND_UNITS = {
  kmh: ["km/h", 3.6, 1],
  ms: ["m/s", 1, 2],
  mph: ["mp/h", 1 / 0.44704, 1],
  kn: ["kn", 3600 / 1852, 1],
} as const;

/** Every variable that this server knows. */
function seriesOf(name: string, windUnit: keyof typeof WIND_UNITS): Series | undefined {
  const [windName, perMPerS, windDecimals] = WIND_UNITS[windUnit];
  const known: Readonly<Record<string, Series>> = {
    temperature_2m: { unit: "°C", decimals: 1, at: (c, j) => c.tempC[j] },
    dew_point_2m: { unit: "°C", decimals: 1, at: (c, j) => c.dewPointC[j] },
    relative_humidity_2m: {
      unit: "%",
      decimals: 0,
      at: (c, j) => humidityPercent(c.tempC[j], c.dewPointC[j]),
    },
    precipitation: { unit: "mm", decimals: 2, at: (c, j) => c.rainMm[j] },
    precipitation_probability: { unit: "%", decimals: 0, at: (c, j) => times(c.rainChanceFrac?.[j], 100) },
    weather_code: { unit: "wmo code", decimals: 0, at: (c, j) => c.weatherCode?.[j] },
    wind_speed_10m: { unit: windName, decimals: windDecimals, at: (c, j) => times(c.windMPerS[j], perMPerS) },
    wind_gusts_10m: {
      unit: windName,
      decimals: windDecimals,
      at: (c, j) => times(c.gustMPerS?.[j], perMPerS),
    },
    shortwave_radiation: { unit: "W/m²", decimals: 1, at: (c, j) => c.radiationWPerM2[j] },
    cloud_cover: { unit: "%", decimals: 0, at: (c, j) => times(c.cloudFrac?.[j], 100) },
    et0_fao_evapotranspiration: { unit: "mm", decimals: 2, at: (c, j) => c.et0Mm?.[j] },
  };
  return Object.hasOwn(known, name) ? known[name] : undefined;
}

/** The part of the invented weather that was asked for, in the shape in which the feed answers. */
export function hourlyReply(
  asked: Parameters,
  from: { weather: InventedWeather; nowUtcMs: number; ensemble: boolean },
): HourlyReply {
  const range = stampRange(asked, from.nowUtcMs);
  const windUnit = asked.wind_speed_unit ?? "kmh";
  if (range === null) return { refusal: "Forecast days or past days are out of range." };
  if (!(windUnit in WIND_UNITS)) return { refusal: "Wind speed unit is invalid." };
  if ((asked.timezone ?? "GMT") !== "GMT") return { refusal: "Only GMT is spoken here." };
  if (from.ensemble && asked.models === undefined) return { refusal: "A model is required." };
  const unix = asked.timeformat === "unixtime";
  const stamps = range.map((utcMs) => (unix ? utcMs / 1000 : new Date(utcMs).toISOString().slice(0, 16)));
  const hourly: Record<string, unknown> = { time: stamps };
  const units: Record<string, string> = { time: unix ? "unixtime" : "iso8601" };
  const courses = from.ensemble ? from.weather.members : [from.weather.hours];
  for (const name of (asked.hourly ?? "").split(",").filter((part) => part !== "")) {
    const series = seriesOf(name, windUnit as keyof typeof WIND_UNITS);
    if (series === undefined) return { refusal: `Cannot read hourly variable '${name.slice(0, 40)}'.` };
    courses.forEach((course, member) => {
      const key = member === 0 ? name : `${name}_member${String(member).padStart(2, "0")}`;
      units[key] = series.unit;
      hourly[key] = range.map((utcMs) =>
        printed(series, course, (utcMs - from.weather.startUtcMs) / HOUR_MS),
      );
    });
  }
  return { body: { ...head(asked), hourly_units: units, hourly } };
}

/** Whole UTC days, from the past days asked to the last day ahead; null when out of the feed's range. */
function stampRange(asked: Parameters, nowUtcMs: number): number[] | null {
  const pastDays = Number(asked.past_days ?? 0);
  const forecastDays = Number(asked.forecast_days ?? 7);
  const inRange = (days: number, most: number) => Number.isInteger(days) && days >= 0 && days <= most;
  if (!inRange(pastDays, 92) || !inRange(forecastDays, 16)) return null;
  const startUtcMs = (Math.floor(nowUtcMs / DAY_MS) - pastDays) * DAY_MS;
  return Array.from({ length: 24 * (pastDays + forecastDays) }, (_, j) => startUtcMs + j * HOUR_MS);
}

function head(asked: Parameters): Record<string, unknown> {
  const elevation = Number(asked.elevation);
  return {
    latitude: Number(asked.latitude),
    longitude: Number(asked.longitude),
    generationtime_ms: 0.5,
    utc_offset_seconds: 0,
    timezone: "GMT",
    timezone_abbreviation: "GMT",
    ...(Number.isFinite(elevation) ? { elevation } : {}),
  };
}

function printed(series: Series, course: InventedCourse, j: number): number | null {
  const value = series.at(course, j);
  return value === undefined || !Number.isFinite(value) ? null : Number(value.toFixed(series.decimals));
}

function times(value: number | undefined, factor: number): number | undefined {
  return value === undefined ? undefined : value * factor;
}

/** Relative humidity from the saturation pressures at dew point and temperature. [FAO56 eq. 10 and 11] */
function humidityPercent(tempC: number | undefined, dewPointC: number | undefined): number | undefined {
  if (tempC === undefined || dewPointC === undefined) return undefined;
  const exponent = (atC: number) => (17.27 * atC) / (atC + 237.3);
  return 100 * Math.exp(exponent(dewPointC) - exponent(tempC));
}
