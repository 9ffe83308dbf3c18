import { z } from "zod";
import { et0TemperatureWork } from "../../core/weather/work/et0-temperature-work.ts";
import { dayFields, dayRange } from "./calc-fields.ts";
import { calculation } from "./calc-lines.ts";

export const et0Temperature = calculation({
  about: "the same of a day from temperatures alone, from latDeg, dayOfYear, tempMinC, tempMaxC",
  schema: z.strictObject(dayFields),
  rules: dayRange,
  work: (line) => ({ ok: true, value: et0TemperatureWork(line) }),
});
