import type { Quantity } from "./quantity.ts";

export interface Variable {
  readonly name: string;
  readonly quantity: Quantity;
}

/** What the forecast is asked for, by the column that it fills. */
export const FORECAST_VARIABLES = {
  tempC: { name: "temperature_2m", quantity: "tempC" },
  dewPointC: { name: "dew_point_2m", quantity: "tempC" },
  rainMm: { name: "precipitation", quantity: "rainMm" },
  rainChanceFrac: { name: "precipitation_probability", quantity: "frac" },
  windMPerS: { name: "wind_speed_10m", quantity: "windMPerS" },
  gustMPerS: { name: "wind_gusts_10m", quantity: "windMPerS" },
  radiationMjPerM2: { name: "shortwave_radiation", quantity: "radiationMjPerM2" },
  cloudFrac: { name: "cloud_cover", quantity: "frac" },
  weatherCode: { name: "weather_code", quantity: "code" },
  et0Mm: { name: "et0_fao_evapotranspiration", quantity: "et0Mm" },
} as const satisfies Record<string, Variable>;

/** What every member of the ensemble is asked for. */
export const MEMBER_VARIABLES = {
  tempC: FORECAST_VARIABLES.tempC,
  dewPointC: FORECAST_VARIABLES.dewPointC,
  rainMm: FORECAST_VARIABLES.rainMm,
  windMPerS: FORECAST_VARIABLES.windMPerS,
  radiationMjPerM2: FORECAST_VARIABLES.radiationMjPerM2,
} as const satisfies Record<string, Variable>;

/** What the archive and the previous runs are asked for. */
export const PAST_VARIABLES = {
  ...MEMBER_VARIABLES,
  gustMPerS: FORECAST_VARIABLES.gustMPerS,
  cloudFrac: FORECAST_VARIABLES.cloudFrac,
} as const satisfies Record<string, Variable>;

/** Not asked for; read when a body has them and the dew point is not there. */
export const HUMIDITY_VARIABLES = {
  humidityFrac: { name: "relative_humidity_2m", quantity: "frac" },
  vpdKPa: { name: "vapour_pressure_deficit", quantity: "vpdKPa" },
} as const satisfies Record<string, Variable>;
