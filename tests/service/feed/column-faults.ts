import { type FaultCase, onForecast, sends, spoiltForecast } from "./fault-case.ts";
import { forecastBody, type HourlyBody } from "./wire-answers.ts";

const YEAR_S = 365 * 86_400;
const TEMP = "temperature_2m";

function shiftedBy(body: HourlyBody, seconds: number): void {
  body.hourly.time = body.hourly.time.map((stamp) => Number(stamp) + seconds);
}

function eachRow(body: HourlyBody, change: (column: unknown[]) => unknown[]): void {
  for (const key of Object.keys(body.hourly)) body.hourly[key] = change(body.hourly[key]!) as never;
}

function inOtherUnit(
  body: HourlyBody,
  of: { key: string; unit: string; to: (value: number) => number },
): void {
  body.hourly_units[of.key] = of.unit;
  body.hourly[of.key] = body.hourly[of.key]!.map((value) => of.to(Number(value)));
}

/** Answers in the right shape with something wrong among hours, units or values. */
export const COLUMN_FAULTS: readonly FaultCase[] = [
  spoiltForecast("short temperature column", "refused: feed-no-temperature, wait", (body) => {
    body.hourly[TEMP] = body.hourly[TEMP]!.slice(3);
  }),
  spoiltForecast("short rain column", "used, 4 members, feed-column-length", (body) => {
    body.hourly.precipitation = body.hourly.precipitation!.slice(3);
  }),
  spoiltForecast("units swapped between columns", "refused: feed-no-temperature, wait", (body) => {
    body.hourly_units[TEMP] = "mm";
    body.hourly_units.precipitation = "°C";
  }),
  spoiltForecast("other documented units", "used, 4 members", (body) => {
    inOtherUnit(body, { key: TEMP, unit: "°F", to: (c) => c * 1.8 + 32 });
    inOtherUnit(body, { key: "precipitation", unit: "inch", to: (mm) => mm / 25.4 });
    inOtherUnit(body, { key: "wind_speed_10m", unit: "mp/h", to: (mPerS) => mPerS / 0.44704 });
    inOtherUnit(body, { key: "wind_gusts_10m", unit: "kn", to: (mPerS) => (mPerS * 3600) / 1852 });
  }),
  spoiltForecast("Kelvin under the name of °C", "refused: feed-no-temperature, wait", (body) => {
    inOtherUnit(body, { key: TEMP, unit: "°C", to: (c) => c + 273.15 });
  }),
  spoiltForecast("a single value beyond the possible", "used, 4 members, feed-column-values", (body) => {
    body.hourly[TEMP]![100] = 999;
  }),
  spoiltForecast("numbers as strings", "used, 4 members, feed-column-values", (body) => {
    body.hourly.cloud_cover = body.hourly.cloud_cover!.map(String);
  }),
  spoiltForecast("unit 'undefined': not offered", "used, 4 members, feed-column-not-offered", (body) => {
    body.hourly_units.shortwave_radiation = "undefined";
    body.hourly.shortwave_radiation = body.hourly.shortwave_radiation!.map(() => null);
  }),
  spoiltForecast("renamed variable", "used, 4 members, feed-column-missing", (body) => {
    body.hourly.wind_speed_at_10_metres = body.hourly.wind_speed_10m!;
    delete body.hourly.wind_speed_10m;
  }),
  spoiltForecast("column of nulls", "used, 4 members, feed-column-empty", (body) => {
    body.hourly.wind_speed_10m = body.hourly.wind_speed_10m!.map(() => null);
  }),
  spoiltForecast("chance of rain and ET0 of nulls, which nothing waits for", "used, 4 members", (body) => {
    body.hourly.precipitation_probability = body.hourly.precipitation_probability!.map(() => null);
    body.hourly.et0_fao_evapotranspiration = body.hourly.et0_fao_evapotranspiration!.map(() => null);
  }),
  spoiltForecast("all columns null", "refused: feed-no-temperature, wait", (body) => {
    for (const key of Object.keys(body.hourly_units)) {
      if (key !== "time") body.hourly[key] = body.hourly[key]!.map(() => null);
    }
  }),
  spoiltForecast("nulls in the last days", "used, 4 members", (body) => {
    for (const key of Object.keys(body.hourly_units)) if (key !== "time") body.hourly[key]!.fill(null, -48);
  }),
  onForecast(
    "bare nan among the values",
    "used, 4 members, feed-nan-repaired",
    sends(JSON.stringify(forecastBody()).replace('"temperature_2m":[14,14.5,', '"temperature_2m":[14,nan,')),
  ),
  onForecast(
    "-0 for no rain",
    "used, 4 members",
    sends(JSON.stringify(forecastBody()).replace('"precipitation":[0,0,', '"precipitation":[-0,-0.0,')),
  ),
  spoiltForecast("hours told twice", "used, 4 members, feed-hours-twice", (body) => {
    eachRow(body, (column) => [...column.slice(0, 50), ...column.slice(48)]);
  }),
  spoiltForecast("hours missing", "used, 4 members, feed-hours-missing", (body) => {
    eachRow(body, (column) => [...column.slice(0, 50), ...column.slice(53)]);
  }),
  spoiltForecast("hours in reverse", "used, 4 members", (body) => {
    eachRow(body, (column) => [...column].reverse());
  }),
  spoiltForecast("no hours at all", "refused: feed-no-hours, report", (body) => {
    eachRow(body, () => []);
  }),
  spoiltForecast("stamps off the whole hour", "refused: feed-no-hours, report", (body) =>
    shiftedBy(body, 600),
  ),
  spoiltForecast("last year's forecast", "refused: feed-wrong-time, wait", (body) =>
    shiftedBy(body, -YEAR_S),
  ),
  spoiltForecast("next year's forecast", "refused: feed-wrong-time, wait", (body) => shiftedBy(body, YEAR_S)),
  spoiltForecast("epoch seconds of a half-hour zone", "used, 4 members", (body) => {
    body.timezone = "America/St_Johns";
    body.utc_offset_seconds = -12_600;
    // True to its label, which lies half an hour from the data.
    shiftedBy(body, 1800);
  }),
  spoiltForecast("local time of a half-hour zone", "used, 4 members", (body) => {
    body.timezone = "Asia/Kolkata";
    body.utc_offset_seconds = 19_800;
    // Labelled with the true offset, read with the one cut to whole hours.
    body.hourly.time = body.hourly.time.map((stamp) =>
      new Date((Number(stamp) + 18_000) * 1000).toISOString().slice(0, 16),
    );
  }),
];
