/*
 * Honest answers in the shape of both feeds, with invented values that a test can foretell. Each test spoils one thing.
 */

const HOUR_MS = 3_600_000;

/** Wednesday noon and some; nothing happens then but tests. */
export const NOW_UTC_MS = Date.UTC(2026, 4, 13, 12, 20);
export const FIRST_STAMP_UTC_MS = Date.UTC(2026, 4, 11);
/** Two days back and fourteen ahead. */
export const STAMPS = 16 * 24;

export interface Hourly {
  time: (number | string)[];
  [column: string]: unknown[];
}

export interface HourlyBody {
  latitude: number;
  longitude: number;
  utc_offset_seconds: number;
  timezone: string;
  hourly_units: Record<string, string>;
  hourly: Hourly;
}

/** Values of the invented weather at a stamp: instants at it, totals of the hour before it. */
export const told = {
  tempC: (j: number) => 14 + (j % 24) / 2,
  dewPointC: (j: number) => 9 + (j % 6) / 10,
  rainMm: (j: number) => (j % 24 === 15 ? 2.5 : 0),
  windMPerS: (j: number) => 3 + (j % 4) / 2,
  gustMPerS: (j: number) => 7 + (j % 4) / 2,
  radiationWPerM2: (j: number) => (j % 24 > 5 && j % 24 < 20 ? 300 : 0),
  code: (j: number) => (j % 24 === 15 ? 95 : 2),
};

export function forecastBody(): HourlyBody {
  const column = (value: (j: number) => unknown) => Array.from({ length: STAMPS }, (_, j) => value(j));
  return {
    latitude: 12.25,
    longitude: 45.5,
    utc_offset_seconds: 0,
    timezone: "GMT",
    hourly_units: {
      time: "unixtime",
      temperature_2m: "°C",
      dew_point_2m: "°C",
      precipitation: "mm",
      precipitation_probability: "%",
      wind_speed_10m: "m/s",
      wind_gusts_10m: "m/s",
      shortwave_radiation: "W/m²",
      cloud_cover: "%",
      weather_code: "wmo code",
      et0_fao_evapotranspiration: "mm",
    },
    hourly: {
      time: column((j) => (FIRST_STAMP_UTC_MS + j * HOUR_MS) / 1000) as number[],
      temperature_2m: column(told.tempC),
      dew_point_2m: column(told.dewPointC),
      precipitation: column(told.rainMm),
      precipitation_probability: column((j) => (told.rainMm(j) > 0 ? 80 : 10)),
      wind_speed_10m: column(told.windMPerS),
      wind_gusts_10m: column(told.gustMPerS),
      shortwave_radiation: column(told.radiationWPerM2),
      cloud_cover: column(() => 40),
      weather_code: column(told.code),
      et0_fao_evapotranspiration: column(() => 0.12),
    },
  };
}

/** Members 0 to n - 1, each as many tenths of a degree warmer as its number. */
export function ensembleBody(memberCount = 4, suffix = ""): HourlyBody {
  const first = (NOW_UTC_MS - (NOW_UTC_MS % (24 * HOUR_MS)) - FIRST_STAMP_UTC_MS) / HOUR_MS;
  const stamps = Array.from({ length: 14 * 24 }, (_, j) => first + j);
  const body: HourlyBody = {
    ...forecastBody(),
    hourly_units: { time: "unixtime" },
    hourly: { time: stamps.map((j) => (FIRST_STAMP_UTC_MS + j * HOUR_MS) / 1000) },
  };
  for (let member = 0; member < memberCount; member += 1) {
    const part = member === 0 ? "" : `_member${String(member).padStart(2, "0")}`;
    const put = (name: string, unit: string, value: (j: number) => number) => {
      body.hourly[name + part + suffix] = stamps.map(value);
      body.hourly_units[name + part + suffix] = unit;
    };
    put("temperature_2m", "°C", (j) => told.tempC(j) + member / 10);
    put("dew_point_2m", "°C", told.dewPointC);
    put("precipitation", "mm", told.rainMm);
    put("wind_speed_10m", "m/s", told.windMPerS);
    put("shortwave_radiation", "W/m²", told.radiationWPerM2);
  }
  return body;
}

interface FallbackStep {
  time: string;
  data: {
    instant: { details: Record<string, number | null> };
    next_1_hours?: { summary: { symbol_code: string }; details: Record<string, number> };
    next_6_hours?: { summary: { symbol_code: string }; details: Record<string, number> };
  };
}

export interface FallbackBody {
  type: "Feature";
  properties: {
    meta: { updated_at: string; units: Record<string, string> };
    timeseries: FallbackStep[];
  };
}

/** Hourly from 12:00 to 18:00, then steps of six hours to 18:00 two days later. */
export function fallbackBody(): FallbackBody {
  const first = NOW_UTC_MS - (NOW_UTC_MS % HOUR_MS);
  const hours = [0, 1, 2, 3, 4, 5, 6, 12, 18, 24, 30, 36, 42, 48, 54];
  const timeseries = hours.map((hour, index) => {
    const length = (hours[index + 1] ?? hour) - hour;
    const total = (rainMm: number, symbol: string) => ({
      summary: { symbol_code: symbol },
      details: { precipitation_amount: rainMm },
    });
    return {
      time: new Date(first + hour * HOUR_MS).toISOString().replace(".000Z", "Z"),
      data: {
        instant: {
          details: {
            air_temperature: 10 + hour / 2,
            relative_humidity: 80,
            wind_speed: 4,
            cloud_area_fraction: 50,
          },
        },
        ...(length === 1 ? { next_1_hours: total(0.5, "rain") } : {}),
        ...(length >= 1 ? { next_6_hours: total(3, "lightrainshowersandthunder_day") } : {}),
      },
    };
  });
  const units = {
    air_temperature: "celsius",
    relative_humidity: "%",
    wind_speed: "m/s",
    cloud_area_fraction: "%",
    precipitation_amount: "mm",
  };
  return { type: "Feature", properties: { meta: { updated_at: "2026-05-13T11:40:00Z", units }, timeseries } };
}
