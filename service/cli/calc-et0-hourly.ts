import { z } from "zod";
import { et0HourlyWork } from "../../core/weather/work/et0-hourly-work.ts";
import { FIELDS } from "./calc-fields.ts";
import { calculation } from "./calc-lines.ts";
import { weatherQuestions } from "./weather-questions.ts";

const LineSchema = z.strictObject({
  latDeg: FIELDS.latDeg,
  lonDeg: FIELDS.lonDeg,
  elevationM: FIELDS.elevationM,
  dayOfYear: FIELDS.dayOfYear,
  hourStartUtc: z.number().min(0).lt(24),
  tempC: FIELDS.tempC,
  dewPointC: FIELDS.dewPointC,
  windMPerS: FIELDS.windMPerS,
  windHeightM: FIELDS.windHeightM,
  radiationMjPerM2: FIELDS.radiationMjPerM2PerHour,
  cloudRatioFrac: z.number().min(0).max(2).optional(),
  coefficients: z.enum(["fao56", "asce-short"]).default("fao56"),
});

export const et0Hourly = calculation({
  about:
    "reference evapotranspiration of an hour, from latDeg, lonDeg, elevationM, dayOfYear, hourStartUtc, tempC, " +
    "dewPointC, windMPerS, windHeightM, radiationMjPerM2; optional cloudRatioFrac (radiation over clear-sky " +
    'radiation, to use instead of the hour\'s own) and coefficients "fao56" | "asce-short"',
  schema: LineSchema,
  work: (line) => ({ ok: true, value: et0HourlyWork(line) }),
  questions: (line, steps) => weatherQuestions({ ...line, warmestC: line.tempC }, steps),
});
