import type { Outcome, Problem } from "../../../core/problem.ts";
import { dewPointFromDeficitC, dewPointFromHumidityC } from "../../../core/weather/dew-point.ts";
import type { HourColumns } from "../../../core/weather/weather.ts";
import { type FeedCode, feedProblem } from "../feed-problem.ts";
import { type HourAxis, hourAxis, onAxis } from "../hour-axis.ts";
import { largerOfEnds, meanOfEnds, stampedAtEnd } from "../hours-from-stamps.ts";
import type { HourlyAnswer } from "./answer-schema.ts";
import { readColumn } from "./read-column.ts";
import { rowInstants } from "./stamps.ts";
import { FORECAST_VARIABLES, HUMIDITY_VARIABLES, type Variable } from "./variables.ts";

export interface ParsedHours {
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly hours: HourColumns;
  readonly notes: readonly Problem[];
}

/** A forecast answer as hour columns in our units. Refused only without usable hours or without temperature. */
export function parseForecast(answer: HourlyAnswer): Outcome<ParsedHours> {
  const axis = hourAxis(rowInstants(answer));
  if (axis === null) {
    return { ok: false, problems: [feedProblem("feed-no-hours", { feed: "forecast" }, ["hourly", "time"])] };
  }
  const notes: Problem[] = axisNotes(axis);
  const stamps = stampReader(answer, { axis, notes });
  const tempC = stamps(FORECAST_VARIABLES.tempC);
  if (tempC.every(Number.isNaN)) {
    const problem = feedProblem("feed-no-temperature", { feed: "forecast" }, ["hourly", "temperature_2m"]);
    return { ok: false, problems: [problem, ...notes] };
  }
  const spare = stampReader(answer, { axis, notes, isSpare: true });
  const hours = {
    tempC: meanOfEnds(tempC),
    dewPointC: meanOfEnds(dewPoints(answer, { axis, tempC, notes })),
    rainMm: stampedAtEnd(stamps(FORECAST_VARIABLES.rainMm)),
    windMPerS: meanOfEnds(stamps(FORECAST_VARIABLES.windMPerS)),
    gustMPerS: stampedAtEnd(stamps(FORECAST_VARIABLES.gustMPerS)),
    radiationMjPerM2: stampedAtEnd(stamps(FORECAST_VARIABLES.radiationMjPerM2)),
    cloudFrac: meanOfEnds(stamps(FORECAST_VARIABLES.cloudFrac)),
    weatherCode: largerOfEnds(stamps(FORECAST_VARIABLES.weatherCode)),
    feedEt0Mm: stampedAtEnd(spare(FORECAST_VARIABLES.et0Mm)),
    feedRainChanceFrac: stampedAtEnd(spare(FORECAST_VARIABLES.rainChanceFrac)),
  };
  const value = { startUtcMs: axis.firstUtcMs, hourCount: axis.stampCount - 1, hours, notes };
  return { ok: true, value };
}

/** Codes of a column that is not there. */
const WANTING: ReadonlySet<string> = new Set([
  "feed-column-missing",
  "feed-column-not-offered",
  "feed-column-empty",
] satisfies FeedCode[]);

/** @param to.isSpare nothing is estimated for want of these quantities, so that want is not noted */
function stampReader(answer: HourlyAnswer, to: { axis: HourAxis; notes: Problem[]; isSpare?: boolean }) {
  return (variable: Variable): Float64Array => {
    const want = { key: variable.name, quantity: variable.quantity, feed: "forecast" as const };
    const { byRow, notes } = readColumn(answer, want);
    to.notes.push(...notes.filter(({ code }) => !to.isSpare || !WANTING.has(code)));
    return onAxis(to.axis, byRow);
  };
}

/** The dew point as told; where it is not, from humidity or the vapour pressure deficit and the temperature. */
function dewPoints(
  answer: HourlyAnswer,
  to: { axis: HourAxis; tempC: Float64Array; notes: Problem[] },
): Float64Array {
  const told = stampReader(answer, to)(FORECAST_VARIABLES.dewPointC);
  // A body without these is the rule, so no note at all is made of them.
  const quietly = stampReader(answer, { axis: to.axis, notes: [] });
  const humidityFrac = quietly(HUMIDITY_VARIABLES.humidityFrac);
  const vpdKPa = quietly(HUMIDITY_VARIABLES.vpdKPa);
  return told.map((dewPointC, stamp) => {
    if (!Number.isNaN(dewPointC)) return dewPointC;
    const tempC = to.tempC[stamp]!;
    const fromHumidityC = dewPointFromHumidityC(tempC, humidityFrac[stamp]!);
    return Number.isNaN(fromHumidityC) ? dewPointFromDeficitC(tempC, vpdKPa[stamp]!) : fromHumidityC;
  });
}

function axisNotes(axis: HourAxis): Problem[] {
  const notes: Problem[] = [];
  const path = ["hourly", "time"];
  if (axis.twice > 0)
    notes.push(feedProblem("feed-hours-twice", { feed: "forecast", rows: axis.twice }, path));
  if (axis.missing > 0) {
    notes.push(feedProblem("feed-hours-missing", { feed: "forecast", hours: axis.missing }, path));
  }
  return notes;
}
