import type { HoursReady } from "../../weather/hours-ready.ts";
import { HOUR_MS, type HourColumns } from "../../weather/weather.ts";
import { type DayAxis, dayAxis } from "../hours/day-axis.ts";
import type { ToldDays } from "../hours/days-of-hours.ts";
import type { Forecaster } from "./forecaster.ts";

/**
 * What runs of so many days before had told of every hour, nearest run first; all on one hour axis. NaN where a run told
 * nothing.
 */
export interface PreviousRuns {
  readonly startUtcMs: number;
  readonly byLeadDay: readonly HourColumns[];
}

/** An hour so far ahead of the morning goes with the run of a day before: twelve hours either way of whole days. */
const HALF_DAY_H = 12;
const RUN_AGE_HOURS = 4;

/**
 * Forecasts as a feed really sent them: every hour ahead from the run that was as old. No ensemble is kept of them, so
 * the planner draws its spread from published errors. An hour that no run of its age told is taken from the next nearer run
 * that told it, at last from what came.
 */
export function previousRunsForecaster({ daily, hours }: ToldDays, runs: PreviousRuns): Forecaster {
  const axis = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);
  const byLead = filledRuns(hours, runs);
  const nearest = byLead[0]!;
  return {
    past: { ...hours, ...pastOf(nearest) },
    weatherAt({ issueDay, issueUtcMs, pastDays, aheadDays }) {
      const span = spanOf(axis, { issueDay, pastDays, aheadDays });
      const issueHour = (issueUtcMs - axis.startUtcMs) / HOUR_MS;
      const leadOf = (hour: number) =>
        Math.max(0, Math.min(byLead.length - 1, Math.floor((hour - issueHour + HALF_DAY_H) / 24)));
      const column = (name: keyof HourColumns) =>
        Float64Array.from(
          { length: span.toHour - span.fromHour },
          (_, i) => byLead[leadOf(span.fromHour + i)]![name][span.fromHour + i]!,
        );
      return {
        startUtcMs: axis.startUtcMs + span.fromHour * HOUR_MS,
        hourCount: span.toHour - span.fromHour,
        hours: everyColumn(column),
        members: null,
        origin: {
          source: "case",
          fetchedUtcMs: issueUtcMs - RUN_AGE_HOURS * HOUR_MS,
          credit: "replayed weather",
        },
      };
    },
  };
}

function spanOf(
  { days }: DayAxis,
  of: { issueDay: number; pastDays: number; aheadDays: number },
): { fromHour: number; toHour: number } {
  return {
    fromHour: days[Math.max(0, of.issueDay - of.pastDays)]!.fromHour,
    toHour: days[Math.min(days.length, of.issueDay + of.aheadDays + 1) - 1]!.toHour,
  };
}

/** Every run on the axis of the hours that came, its holes filled from nearer runs. */
function filledRuns(hours: HoursReady, runs: PreviousRuns): HourColumns[] {
  const offset = (hours.startUtcMs - runs.startUtcMs) / HOUR_MS;
  let nearer: HourColumns = cameAsTold(hours);
  return runs.byLeadDay.map((run) => {
    const filled = everyColumn((name) =>
      nearer[name].map((value, i) => {
        const told = run[name][i + offset];
        return told === undefined || Number.isNaN(told) ? value : told;
      }),
    );
    nearer = filled;
    return filled;
  });
}

/** What came, as if it had been foretold; what no forecast holds is unknown. */
function cameAsTold(hours: HoursReady): HourColumns {
  const unknown = () => new Float64Array(hours.hourCount).fill(Number.NaN);
  return { ...hours, weatherCode: unknown(), feedEt0Mm: unknown(), feedRainChanceFrac: unknown() };
}

function pastOf(nearest: HourColumns): Omit<HoursReady, "startUtcMs" | "hourCount" | "memberCount"> {
  const { feedEt0Mm: _et0, feedRainChanceFrac: _chance, weatherCode, ...columns } = nearest;
  return { ...columns, weatherCode: weatherCode.map((code) => (Number.isNaN(code) ? -1 : code)) };
}

const NO_COLUMN = new Float64Array(0);
const COLUMNS: HourColumns = {
  tempC: NO_COLUMN,
  dewPointC: NO_COLUMN,
  rainMm: NO_COLUMN,
  windMPerS: NO_COLUMN,
  gustMPerS: NO_COLUMN,
  radiationMjPerM2: NO_COLUMN,
  cloudFrac: NO_COLUMN,
  weatherCode: NO_COLUMN,
  feedEt0Mm: NO_COLUMN,
  feedRainChanceFrac: NO_COLUMN,
};

function everyColumn(of: (name: keyof HourColumns) => Float64Array): HourColumns {
  const names = Object.keys(COLUMNS) as (keyof HourColumns)[];
  return Object.fromEntries(names.map((name) => [name, of(name)])) as unknown as HourColumns;
}
