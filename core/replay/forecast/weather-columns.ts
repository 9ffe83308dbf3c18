import type { HourColumns, MemberColumns } from "../../weather/weather.ts";
import type { ForecastHours, Truth } from "./forecast-hours.ts";

/** The past up to the day of issue, then what is told from it on. */
export function joined(of: {
  past: ForecastHours;
  ahead: ForecastHours;
  fromHour: number;
  issueHour: number;
}): ForecastHours {
  const columns = (Object.keys(of.past) as (keyof ForecastHours)[]).map((name) => {
    const past = of.past[name].subarray(of.fromHour, of.issueHour);
    const out = new Float64Array(past.length + of.ahead[name].length);
    out.set(past);
    out.set(of.ahead[name], past.length);
    return [name, out] as const;
  });
  return Object.fromEntries(columns) as unknown as ForecastHours;
}

/** Gusts go with the wind told: as much over it as they truly were over the true wind. */
export function hourColumns(
  told: ForecastHours,
  { truth, fromHour, toHour }: { truth: Truth; fromHour: number; toHour: number },
): HourColumns {
  const unknown = () => new Float64Array(toHour - fromHour).fill(Number.NaN);
  const { gustMPerS, windMPerS } = truth.hours;
  return {
    ...told,
    gustMPerS: gustMPerS
      .slice(fromHour, toHour)
      .map((gust, i) => (gust * told.windMPerS[i]!) / Math.max(0.2, windMPerS[fromHour + i]!)),
    weatherCode: unknown(),
    feedEt0Mm: unknown(),
    feedRainChanceFrac: unknown(),
  };
}

/** Members on the weather's whole axis, unknown before the day of issue. */
export function memberColumns(
  told: ForecastHours,
  of: { memberCount: number; hourCount: number; skipHours: number },
): MemberColumns {
  const placed = (column: Float64Array) => {
    const out = new Float64Array(of.hourCount * of.memberCount).fill(Number.NaN);
    out.set(column, of.skipHours * of.memberCount);
    return out;
  };
  return {
    memberCount: of.memberCount,
    tempC: placed(told.tempC),
    dewPointC: placed(told.dewPointC),
    rainMm: placed(told.rainMm),
    windMPerS: placed(told.windMPerS),
    radiationMjPerM2: placed(told.radiationMjPerM2),
  };
}
