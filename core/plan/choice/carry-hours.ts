import { type HourRun, runsOf } from "../../weather/spells.ts";
import { type Dangers, lastDangerHour, onsetHour } from "../days/onset.ts";
import type { SpotDays } from "../days/spot-days.ts";
import { heatLimitC, type Stander, tipMPerS } from "../harm/spot-harm.ts";
import type { HarmTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";

/** A pot and the spot where it belongs. */
interface AtHome {
  readonly stander: Stander;
  readonly homeAt: SpotDays;
}

/** Working hours within which a carry is to be done: from the first to before the last. */
export interface CarrySpan {
  readonly fromHour: number;
  /** Exclusive: done by the beginning of this hour. */
  readonly byHour: number;
}

/**
 * In before the first of the dangers that it is for begins: the last working hour that ends before the onset. Where
 * thunder parts the day, the longer of its stretches.
 */
export function carryInSpan(
  { days }: Pick<PlanContext, "days">,
  { stander, homeAt, day: d, terms }: AtHome & { day: number; terms: readonly HarmTerm[] },
): CarrySpan | null {
  const day = days[d]!;
  const first = day.workHours[0];
  if (first === undefined) return null;
  const onset = onsetHour(homeAt, d, dangersOf(stander, terms)) ?? day.toHour;
  const run = longestRun(day.workHours.filter((hour) => hour + 1 <= onset));
  return { fromHour: run?.fromHour ?? first, byHour: run?.toHour ?? first + 1 };
}

/** Out once the danger of the night before is over, any working hour of the day. */
export function carryOutSpan(
  { days }: Pick<PlanContext, "days">,
  { stander, homeAt, day: d }: AtHome & { day: number },
): CarrySpan | null {
  const day = days[d]!;
  const last = day.workHours.at(-1);
  if (last === undefined) return null;
  const dangers = {
    belowC: stander.now.values.damageC + COLD_MARGIN_C,
    tipMPerS: tipMPerS(stander),
  };
  const nightBefore = lastDangerHour(homeAt, d, dangers) ?? -1;
  const run = longestRun(day.workHours.filter((hour) => hour > nightBefore));
  return { fromHour: run?.fromHour ?? last, byHour: run?.toHour ?? last + 1 };
}

/** The longest stretch of hours that follow each other, the first of several: thunder may part the hours of a day. */
function longestRun(hours: readonly number[]): HourRun | null {
  const counted = new Set(hours);
  const rule = { holds: (hour: number) => counted.has(hour), mostBreakHours: 0 };
  const length = ({ fromHour, toHour }: HourRun) => toHour - fromHour;
  return runsOf((hours.at(-1) ?? -1) + 1, rule).reduce<HourRun | null>(
    (longest, run) => (longest !== null && length(longest) >= length(run) ? longest : run),
    null,
  );
}

/** Degrees above the line of damage from which a morning is mild enough. Chosen by us. */
const COLD_MARGIN_C = 1;

/** What the onset is looked for in: every danger that the carry is for. */
function dangersOf(stander: Stander, terms: readonly HarmTerm[]): Dangers {
  return {
    ...(terms.includes("cold") ? { belowC: stander.now.values.damageC } : {}),
    ...(terms.includes("wind") ? { tipMPerS: tipMPerS(stander) } : {}),
    ...(terms.includes("heat") ? { aboveC: heatLimitC(stander) } : {}),
    ...(terms.some((term) => term === "hail" || term.startsWith("wet")) ? { rain: true } : {}),
  };
}
