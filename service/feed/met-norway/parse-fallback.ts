import type { Outcome, Problem } from "../../../core/problem.ts";
import { HOUR_MS, type HourColumns } from "../../../core/weather/weather.ts";
import { feedProblem } from "../feed-problem.ts";
import { largerOfEnds, meanOfEnds } from "../hours-from-stamps.ts";
import type { FallbackAnswer } from "./answer-schema.ts";
import { type InstantName, instantInSpan, type Span, spansOf, totalsInSpan } from "./between-steps.ts";
import { type StepValues, stepValues, strangeUnits } from "./step-values.ts";

export interface ParsedFallback {
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly hours: HourColumns;
  readonly coarseFromUtcMs: number | null;
  readonly notes: readonly Problem[];
}

/** The first step may lie up to this far ahead of now; its values then hold back to the present hour. */
const HELD_BACK_HOURS = 2;
/** Longer than any answer: some ten days. */
const MOST_HOURS = 24 * 20;

/** A fallback answer as hour columns from the present hour (or the first step, if earlier) to the last step. */
export function parseFallback(answer: FallbackAnswer, nowUtcMs: number): Outcome<ParsedFallback> {
  const { meta, timeseries } = answer.properties;
  const steps = inOrder(timeseries.map((step) => stepValues(step, meta.units)));
  const spans = spansOf(heldBack(steps, nowUtcMs));
  const path = ["properties", "timeseries"];
  const hourCount = spans.reduce((sum, span) => sum + span.hours, 0);
  if (!Number.isInteger(hourCount) || hourCount < 1 || hourCount > MOST_HOURS) {
    return { ok: false, problems: [feedProblem("feed-no-hours", { feed: "fallback" }, path)] };
  }
  const hours = columnsOf(spans, hourCount);
  if (hours.tempC.every(Number.isNaN)) {
    return { ok: false, problems: [feedProblem("feed-no-temperature", { feed: "fallback" }, path)] };
  }
  const coarseFromUtcMs = spans.find((span) => span.hours > 1)?.from.utcMs ?? null;
  const notes = notesOn({ coarseFromUtcMs, strange: strangeUnits(meta.units) });
  return { ok: true, value: { startUtcMs: spans[0]!.from.utcMs, hourCount, hours, coarseFromUtcMs, notes } };
}

/** Ascending, each instant once, whole hours only. */
function inOrder(steps: readonly StepValues[]): StepValues[] {
  const byInstant = new Map<number, StepValues>();
  for (const step of steps) {
    if (Number.isInteger(step.utcMs / HOUR_MS) && !byInstant.has(step.utcMs)) byInstant.set(step.utcMs, step);
  }
  return [...byInstant.values()].sort((a, b) => a.utcMs - b.utcMs);
}

function heldBack(steps: readonly StepValues[], nowUtcMs: number): StepValues[] {
  const first = steps[0];
  const thisHourUtcMs = Math.floor(nowUtcMs / HOUR_MS) * HOUR_MS;
  if (first === undefined) return [];
  const aheadHours = (first.utcMs - thisHourUtcMs) / HOUR_MS;
  if (aheadHours <= 0 || aheadHours > HELD_BACK_HOURS) return [...steps];
  const held = Array.from({ length: aheadHours }, (_, hour) => ({
    ...first,
    utcMs: thisHourUtcMs + hour * HOUR_MS,
  }));
  return [...held, ...steps];
}

function columnsOf(spans: readonly Span[], hourCount: number): HourColumns {
  const instants = (name: InstantName) => {
    const inside = spans.flatMap((span) =>
      Array.from({ length: span.hours }, (_, hour) => instantInSpan(span, { name, hour })),
    );
    return Float64Array.from([...inside, spans.at(-1)!.to[name]]);
  };
  const totals = spans.flatMap((span) =>
    Array.from({ length: span.hours }, (_, hour) => totalsInSpan(span, hour)),
  );
  const unknown = () => new Float64Array(hourCount).fill(Number.NaN);
  return {
    tempC: meanOfEnds(instants("tempC")),
    dewPointC: meanOfEnds(instants("dewPointC")),
    rainMm: Float64Array.from(totals, (hour) => hour.rainMm),
    windMPerS: meanOfEnds(instants("windMPerS")),
    gustMPerS: largerOfEnds(instants("gustMPerS")),
    radiationMjPerM2: unknown(),
    cloudFrac: meanOfEnds(instants("cloudFrac")),
    weatherCode: Float64Array.from(totals, (hour) => hour.weatherCode),
    feedEt0Mm: unknown(),
    feedRainChanceFrac: Float64Array.from(totals, (hour) => hour.rainChanceFrac),
  };
}

function notesOn(told: { coarseFromUtcMs: number | null; strange: readonly string[] }): Problem[] {
  const feed = "fallback";
  const units = told.strange.map((column) => feedProblem("feed-column-unit", { feed, column }));
  const { coarseFromUtcMs } = told;
  return coarseFromUtcMs === null
    ? units
    : [...units, feedProblem("feed-coarse-tail", { feed, coarseFromUtcMs })];
}
