import type { DayOutline } from "../../core/plan/plan.ts";
import type { Words } from "../words/words.ts";
import type { Naming } from "./naming.ts";

/** The day's sky in one sentence, and its thunder hours in a second. */
export function skyLines(day: DayOutline | undefined, naming: Naming): string[] {
  if (!day) return [];
  const { words } = naming;
  const thunder = thunderText(day, naming);
  return [
    words.say("sky.line", skyFigures(day, naming)),
    ...(thunder === null ? [] : [words.say("sky.thunder", { hours: thunder })]),
  ];
}

/** A coming day in one short sentence. */
export function comingSky(day: DayOutline, naming: Naming): string {
  const thunder = thunderText(day, naming);
  const line = naming.words.say("sky.line", skyFigures(day, naming));
  return thunder === null ? line : `${line} ${naming.words.say("sky.thunder", { hours: thunder })}`;
}

function skyFigures(day: DayOutline, { words }: Naming): Record<string, number | string> {
  const wet = day.rainShareFrac >= 0.1 || day.rainMm.high >= 0.5;
  return {
    tempMinC: day.tempMinC.mid,
    tempMaxC: day.tempMaxC.mid,
    gustMPerS: day.gustMPerS,
    rain: wet ? rainText(day, words) : words.say("sky.dry"),
  };
}

function rainText({ rainShareFrac, rainMm }: DayOutline, { say, figure }: Words): string {
  const isNarrow = figure("rainMm", rainMm.low)?.number === figure("rainMm", rainMm.high)?.number;
  const amount = { lowMm: rainMm.low, highMm: rainMm.high };
  return say(isNarrow ? "sky.rain-one" : "sky.rain", { rainShareFrac, ...amount });
}

/** Thunder hours as spans: neighbouring hours are one span. */
function thunderText(day: DayOutline, { words, plan }: Naming): string | null {
  if (day.thunderHours.length === 0) return null;
  const spans = hourSpans(day.thunderHours.map((hour) => Date.parse(hour)));
  const texts = spans.map(({ fromUtcMs, toUtcMs }) =>
    words.say("sky.span", { from: words.clock(fromUtcMs, plan.zone), to: words.clock(toUtcMs, plan.zone) }),
  );
  return words.list(texts);
}

const HOUR_MS = 3_600_000;

/** Joins hours that follow each other into spans. */
export function hourSpans(hoursUtcMs: readonly number[]): { fromUtcMs: number; toUtcMs: number }[] {
  const spans: { fromUtcMs: number; toUtcMs: number }[] = [];
  for (const hour of [...hoursUtcMs].sort((a, b) => a - b)) {
    const last = spans.at(-1);
    if (last && last.toUtcMs === hour) last.toUtcMs = hour + HOUR_MS;
    else spans.push({ fromUtcMs: hour, toUtcMs: hour + HOUR_MS });
  }
  return spans;
}
