import { et0OfOpenHourMm } from "../../weather/open-hour.ts";
import type { Weather } from "../../weather/weather.ts";

/** What a morning's forecast says in plain figures, by day from today; a day runs from round to round. */
export interface Outlook {
  readonly rainMm: readonly number[];
  /** Share of the members with 5 mm or more. */
  readonly wetShareFrac: readonly number[];
  readonly coldestC: readonly number[];
  /** The day before, as the feed has it. */
  readonly yesterday: { readonly rainMm: number; readonly et0Mm: number };
}

/** What people know of their town, by half month (0 to 23). */
export interface PlaceNormals {
  readonly meanMinimumC: Float64Array;
  readonly rainMmPerDay: Float64Array;
  readonly et0MmPerDay: Float64Array;
}

/** Rain of a day that people call wet, mm. */
const WET_MM = 5;
/** Cloud ratio where only a plain figure is wanted. Common practice: FAO-56's middle. */
const CLOUD_RATIO_FRAC = 0.7;
const DAYS = 4;

/** @param nowHour  index in the weather of the hour that begins with the round; a day of past stands before it */
export function outlookOf(weather: Weather, at: { nowHour: number; elevationM: number }): Outlook {
  const { hours, members } = weather;
  const days = Array.from({ length: DAYS }, (_, d) => {
    const from = at.nowHour + 24 * d;
    return { from, to: Math.min(weather.hourCount, from + 24) };
  }).filter(({ from, to }) => to > from);
  return {
    rainMm: days.map(({ from, to }) => sum(hours.rainMm.subarray(from, to))),
    wetShareFrac: days.map((day) => wetShare(members, hours.rainMm, day)),
    coldestC: days.map(({ from, to }) => Math.min(...hours.tempC.subarray(from, to))),
    yesterday: {
      rainMm: sum(hours.rainMm.subarray(Math.max(0, at.nowHour - 24), at.nowHour)),
      et0Mm: et0OfHours(hours, {
        from: Math.max(0, at.nowHour - 24),
        to: at.nowHour,
        elevationM: at.elevationM,
      }),
    },
  };
}

function wetShare(
  members: Weather["members"],
  runMm: Float64Array,
  day: { from: number; to: number },
): number {
  if (members === null) return sum(runMm.subarray(day.from, day.to)) >= WET_MM ? 1 : 0;
  const { memberCount, rainMm } = members;
  const sums = new Float64Array(memberCount);
  for (let i = day.from * memberCount; i < day.to * memberCount; i++) sums[i % memberCount]! += rainMm[i]!;
  return sums.filter((mm) => mm >= WET_MM).length / memberCount;
}

/** Reference evapotranspiration in the open over some hours, mm. */
export function et0OfHours(
  hours: Pick<Weather["hours"], "tempC" | "dewPointC" | "windMPerS" | "radiationMjPerM2">,
  span: { from: number; to: number; elevationM: number },
): number {
  let total = 0;
  for (let hour = span.from; hour < span.to; hour++) {
    total += Math.max(
      0,
      et0OfOpenHourMm({
        tempC: hours.tempC[hour]!,
        dewPointC: hours.dewPointC[hour]!,
        windMPerS: hours.windMPerS[hour]!,
        radiationMjPerM2: hours.radiationMjPerM2[hour]!,
        elevationM: span.elevationM,
        cloudRatioFrac: CLOUD_RATIO_FRAC,
      }),
    );
  }
  return total;
}

function sum(column: Float64Array): number {
  return column.reduce((total, value) => total + value, 0);
}
