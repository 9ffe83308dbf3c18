import { z } from "zod";
import type { Problem } from "../../core/problem.ts";
import { type Et0DailyInput, et0DailyWork } from "../../core/weather/work/et0-daily-work.ts";
import { dayFields, dayRange, FIELDS } from "./calc-fields.ts";
import { calculation } from "./calc-lines.ts";
import { weatherQuestions } from "./weather-questions.ts";

const LineSchema = z.strictObject({
  ...dayFields,
  elevationM: FIELDS.elevationM,
  windMPerS: FIELDS.windMPerS,
  windHeightM: FIELDS.windHeightM,
  radiationMjPerM2: FIELDS.radiationMjPerM2PerDay,
  rhMaxFrac: FIELDS.share.optional(),
  rhMinFrac: FIELDS.share.optional(),
  rhMeanFrac: FIELDS.share.optional(),
  dewPointC: FIELDS.dewPointC.optional(),
});

type Line = z.output<typeof LineSchema>;

const WAYS = ["rhMaxFrac + rhMinFrac", "rhMeanFrac", "rhMaxFrac", "dewPointC"] as const;

export const et0Daily = calculation({
  about:
    "reference evapotranspiration of a day, from latDeg, elevationM, dayOfYear, tempMinC, tempMaxC, windMPerS, " +
    `windHeightM, radiationMjPerM2 and one of ${WAYS.join(" | ")}`,
  schema: LineSchema,
  rules: (line) => [...dayRange(line), ...humidity(line)],
  work: (line) => ({ ok: true, value: et0DailyWork(line as Et0DailyInput) }),
  questions: (line, steps) => weatherQuestions({ ...line, warmestC: line.tempMaxC }, steps),
});

/** A day's humidity is given in one way, neither more nor less. */
function humidity(line: Line): Problem[] {
  const { rhMaxFrac, rhMinFrac } = line;
  const pair = rhMaxFrac !== undefined || rhMinFrac !== undefined;
  const given = [pair, line.rhMeanFrac !== undefined, line.dewPointC !== undefined].filter(Boolean).length;
  if (given === 0) return [{ code: "humidity-missing", path: [], data: { oneOf: WAYS } }];
  if (given > 1) return [{ code: "humidity-given-twice", path: [], data: { oneOf: WAYS } }];
  if (rhMinFrac === undefined) return [];
  if (rhMaxFrac === undefined)
    return [{ code: "missing", path: ["rhMaxFrac"], data: { neededBy: "rhMinFrac" } }];
  if (rhMinFrac <= rhMaxFrac) return [];
  return [
    {
      code: "wrong-order",
      path: ["rhMinFrac"],
      data: { given: rhMinFrac, atMost: rhMaxFrac, other: "rhMaxFrac" },
    },
  ];
}
