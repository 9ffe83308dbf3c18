import type { Outcome, Problem } from "../../../core/problem.ts";
import type { PreviousRuns } from "../../../core/replay/forecast/previous-runs.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import { HOUR_MS, type HourColumns } from "../../../core/weather/weather.ts";
import { answerInText } from "../answer-in-text.ts";
import { feedProblem } from "../feed-problem.ts";
import type { FeedSettings } from "../feed-settings.ts";
import { httpGet } from "../http-get.ts";
import { HourlyAnswer } from "./answer-schema.ts";
import { parseForecast } from "./parse-forecast.ts";
import { type AskedPoint, archiveAddress, LEAD_DAYS, previousRunsAddress, runName } from "./request.ts";
import { PAST_VARIABLES } from "./variables.ts";

/** Past hours of a place, and where the feed kept them what its forecasts had told of each. */
export interface PastYear {
  readonly startUtcMs: number;
  readonly hours: HourColumns;
  /** Null where no run of a day before is kept, as before 2024. */
  readonly runs: PreviousRuns | null;
  readonly notes: readonly Problem[];
}

export interface PastAsk {
  readonly point: AskedPoint;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
  readonly fromDay: CalendarDay;
  /** The last day, UTC as the first. */
  readonly toDay: CalendarDay;
}

/** Days in one call: the answer stays small, and the calls are few. */
const DAYS_A_CALL = 90;
const DAY_MS = 24 * HOUR_MS;
/** With fewer hours than this told by the run of a day before, forecasts are drawn instead. Chosen by us. */
const LEAST_TOLD_FRAC = 0.8;

/**
 * The hours of past days from the feed's archive, with what its previous runs had told of them: call after call, so many days
 * at a time. A failing archive is a failure; failing previous runs are a note, and the forecasts of a replay are then drawn.
 */
export async function fetchPastYear(ask: PastAsk): Promise<Outcome<PastYear>> {
  const parts: Parsed[] = [];
  const runParts: Parsed[][] = Array.from({ length: LEAD_DAYS }, () => []);
  const notes: Problem[] = [];
  for (const span of spansOf(ask)) {
    const archive = await answered(ask, archiveAddress(ask.feed, { ...ask, ...span }));
    if (!archive.ok) return archive;
    const hours = parseForecast(archive.value);
    if (!hours.ok) return hours;
    parts.push(hours.value);
    if (notes.length > 0) continue;
    const runs = await answered(ask, previousRunsAddress(ask.feed, { ...ask, ...span }));
    if (!runs.ok) notes.push(...runs.problems);
    else for (let lead = 0; lead < LEAD_DAYS; lead++) runParts[lead]!.push(...leadOf(runs.value, lead));
  }
  const { startUtcMs, hours } = laidOut(parts);
  return { ok: true, value: { startUtcMs, hours, runs: notes.length > 0 ? null : runsOf(runParts), notes } };
}

type Parsed = { readonly startUtcMs: number; readonly hourCount: number; readonly hours: HourColumns };

/** Each begins with the last day of the one before, so that the hour over midnight has both its ends. */
function* spansOf({ fromDay, toDay }: PastAsk): Generator<{ fromDay: CalendarDay; toDay: CalendarDay }> {
  const lastMs = Date.parse(`${toDay}T00:00:00Z`);
  const stepMs = (DAYS_A_CALL - 1) * DAY_MS;
  const dayOf = (utcMs: number) => new Date(utcMs).toISOString().slice(0, 10) as CalendarDay;
  for (let ms = Date.parse(`${fromDay}T00:00:00Z`); ms < lastMs; ms += stepMs) {
    yield { fromDay: dayOf(ms), toDay: dayOf(Math.min(lastMs, ms + stepMs)) };
  }
}

async function answered(ask: PastAsk, url: URL | null): Promise<Outcome<HourlyAnswer>> {
  const feed = "archive";
  if (url === null) return { ok: false, problems: [feedProblem("feed-bad-address", { feed })] };
  const got = await httpGet({ feedRole: feed, url, headers: {}, feed: ask.feed, nowUtcMs: ask.nowUtcMs });
  return got.ok ? answerInText(got.value, { schema: HourlyAnswer, feed }) : got;
}

/** The columns of one lead day under their plain names; nothing where that run told no temperature. */
function leadOf(answer: HourlyAnswer, leadDay: number): Parsed[] {
  const renamed = <T>(record: Readonly<Record<string, T>>): [string, T][] =>
    Object.values(PAST_VARIABLES).flatMap(({ name }): [string, T][] => {
      const key = runName(name, leadDay);
      return Object.hasOwn(record, key) ? [[name, record[key]!]] : [];
    });
  const hourly = { ...Object.fromEntries(renamed(answer.hourly)), time: answer.hourly.time };
  const parsed = parseForecast({
    ...answer,
    hourly,
    hourly_units: Object.fromEntries(renamed(answer.hourly_units)),
  });
  return parsed.ok ? [parsed.value] : [];
}

/** Parts in a row on one axis; hours between them are unknown. */
function laidOut(parts: readonly Parsed[]): Parsed {
  const startUtcMs = Math.min(...parts.map((part) => part.startUtcMs));
  const endUtcMs = Math.max(...parts.map((part) => part.startUtcMs + part.hourCount * HOUR_MS));
  const hourCount = (endUtcMs - startUtcMs) / HOUR_MS;
  const names = Object.keys(parts[0]!.hours) as (keyof HourColumns)[];
  const columns = names.map((name) => {
    const out = new Float64Array(hourCount).fill(Number.NaN);
    for (const part of parts) out.set(part.hours[name], (part.startUtcMs - startUtcMs) / HOUR_MS);
    return [name, out];
  });
  return { startUtcMs, hourCount, hours: Object.fromEntries(columns) as HourColumns };
}

function runsOf(byLead: readonly (readonly Parsed[])[]): PreviousRuns | null {
  if (byLead.some((parts) => parts.length === 0)) return null;
  const laid = byLead.map(laidOut);
  const { startUtcMs, hourCount, hours } = laid[1]!;
  const told = hours.tempC.filter((tempC) => !Number.isNaN(tempC)).length;
  if (told < LEAST_TOLD_FRAC * hourCount || laid.some((run) => run.startUtcMs !== startUtcMs)) return null;
  return { startUtcMs, byLeadDay: laid.map((run) => run.hours) };
}
