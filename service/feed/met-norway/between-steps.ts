import { HOUR_MS } from "../../../core/weather/weather.ts";
import type { StepValues } from "./step-values.ts";

/** Values told for instants, which are interpolated between steps. */
export type InstantName = "tempC" | "dewPointC" | "windMPerS" | "gustMPerS" | "cloudFrac";

/** The longest step that is bridged; a longer one is a hole and stays unknown. */
const LONGEST_STEP_HOURS = 6;

export interface Span {
  readonly from: StepValues;
  readonly to: StepValues;
  readonly hours: number;
}

/** The spans between neighbouring steps. */
export function spansOf(steps: readonly StepValues[]): Span[] {
  return steps.slice(1).map((to, index) => {
    const from = steps[index]!;
    return { from, to, hours: (to.utcMs - from.utcMs) / HOUR_MS };
  });
}

/** Value of an instant `hour` hours into a span, 0 to its length; NaN inside a hole. */
export function instantInSpan(span: Span, at: { name: InstantName; hour: number }): number {
  const { from, to, hours } = span;
  if (at.hour === 0) return from[at.name];
  if (at.hour === hours) return to[at.name];
  if (hours > LONGEST_STEP_HOURS) return Number.NaN;
  const plain = straight(from[at.name], to[at.name], at.hour / hours);
  return at.name === "tempC" ? plain + swing(span) * (1 - Math.abs((2 * at.hour) / hours - 1)) : plain;
}

/**
 * How far the temperature leaves the straight line in the middle of a long step to reach the extreme that is told
 * for it. A night's low between two instants would be lost otherwise, and cold is what this is for.
 */
function swing({ from, to }: Span): number {
  const told = from.nextSixHours;
  if (told === null) return 0;
  const middleC = (from.tempC + to.tempC) / 2;
  const below = told.tempMinC < Math.min(from.tempC, to.tempC) ? told.tempMinC - middleC : 0;
  const above = told.tempMaxC > Math.max(from.tempC, to.tempC) ? told.tempMaxC - middleC : 0;
  return Math.abs(below) >= Math.abs(above) ? below : above;
}

/**
 * Rain, chance and code of the hour that begins `hour` hours into a span. The six-hour amount is shared evenly; its
 * chance is of six hours and so is none of one. Never both amounts.
 */
export function totalsInSpan(
  span: Span,
  hour: number,
): { rainMm: number; rainChanceFrac: number; weatherCode: number } {
  const { nextHour, nextSixHours } = span.from;
  if (hour === 0 && span.hours === 1 && nextHour !== null) return nextHour;
  if (nextSixHours === null || hour >= LONGEST_STEP_HOURS) {
    return { rainMm: Number.NaN, rainChanceFrac: Number.NaN, weatherCode: Number.NaN };
  }
  return {
    rainMm: nextSixHours.rainMm / LONGEST_STEP_HOURS,
    rainChanceFrac: Number.NaN,
    weatherCode: nextSixHours.weatherCode,
  };
}

function straight(from: number, to: number, shareFrac: number): number {
  return from + (to - from) * shareFrac;
}
