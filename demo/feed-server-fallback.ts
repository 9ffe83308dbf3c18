import type { InventedHours, InventedWeather } from "./invented-weather-type.ts";

const HOUR_MS = 3_600_000;
/** As seen of the fallback feed: some two days by the hour, then steps of six hours to the tenth day. */
const HOURLY_STEPS = 52;
const LAST_STEP_HOUR = 228;

/** The invented weather in the fallback's shape: amounts belong to the time AFTER their stamp. */
export function fallbackBody(
  point: { latDeg: number; lonDeg: number; elevationM: number },
  from: { weather: InventedWeather; nowUtcMs: number; updatedUtcMs: number },
): Record<string, unknown> {
  const firstUtcMs = Math.ceil(from.nowUtcMs / HOUR_MS) * HOUR_MS - HOUR_MS;
  const first = (firstUtcMs - from.weather.startUtcMs) / HOUR_MS;
  const timeseries = stepHours(firstUtcMs).map((hour, index, all) => ({
    time: iso(firstUtcMs + hour * HOUR_MS),
    data: stepData(from.weather.hours, { j: first + hour, stepHours: (all[index + 1] ?? hour) - hour }),
  }));
  return {
    type: "Feature",
    geometry: { type: "Point", coordinates: [point.lonDeg, point.latDeg, point.elevationM] },
    properties: { meta: { updated_at: iso(from.updatedUtcMs), units: UNITS }, timeseries },
  };
}

const UNITS = {
  air_pressure_at_sea_level: "hPa",
  air_temperature: "celsius",
  cloud_area_fraction: "%",
  precipitation_amount: "mm",
  relative_humidity: "%",
  wind_speed: "m/s",
};

/** Hours after the first stamp; the long steps stand on 00, 06, 12 and 18 UTC. */
function stepHours(firstUtcMs: number): number[] {
  const hours: number[] = [];
  let hour = 0;
  while (hour <= HOURLY_STEPS || (firstUtcMs / HOUR_MS + hour) % 6 !== 0) hours.push(hour++);
  for (; hour <= LAST_STEP_HOUR; hour += 6) hours.push(hour);
  return hours;
}

function stepData(hours: InventedHours, step: { j: number; stepHours: number }): Record<string, unknown> {
  const { j, stepHours: length } = step;
  const rainMm = sum(hours.rainMm.slice(j + 1, j + 1 + length));
  const ahead = {
    summary: { symbol_code: symbol(hours, step) },
    details: { precipitation_amount: rounded(rainMm) },
  };
  return {
    instant: {
      details: {
        air_pressure_at_sea_level: 1015,
        air_temperature: rounded(hours.tempC[j]),
        cloud_area_fraction: rounded((hours.cloudFrac[j] ?? 0) * 100),
        relative_humidity: rounded(humidityPercent(hours.tempC[j], hours.dewPointC[j])),
        wind_speed: rounded(hours.windMPerS[j]),
      },
    },
    ...(length === 0 ? {} : { [length === 1 ? "next_1_hours" : "next_6_hours"]: ahead }),
  };
}

function symbol(hours: InventedHours, step: { j: number; stepHours: number }): string {
  const code = Math.max(0, ...hours.weatherCode.slice(step.j, step.j + 1 + step.stepHours));
  if (code >= 95) return "rainandthunder";
  if (code >= 61) return "rain";
  return code >= 3 ? "cloudy" : "clearsky_day";
}

function humidityPercent(tempC = Number.NaN, dewPointC = Number.NaN): number {
  const exponent = (atC: number) => (17.27 * atC) / (atC + 237.3);
  return 100 * Math.exp(exponent(dewPointC) - exponent(tempC));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

function rounded(value = Number.NaN): number | null {
  return Number.isFinite(value) ? Number(value.toFixed(1)) : null;
}

function iso(utcMs: number): string {
  return new Date(utcMs).toISOString().replace(".000Z", "Z");
}
