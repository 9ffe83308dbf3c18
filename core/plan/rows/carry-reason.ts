import { calendarDay } from "../../site/local-days.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { heatLimitC, tipMPerS } from "../harm/spot-harm.ts";
import type { HarmTerm } from "../harm/term.ts";
import { tippedShare } from "../harm/toppling.ts";
import type { Reason } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf, shareWhere } from "./spread-of.ts";

interface Away {
  readonly study: PotStudy;
  readonly term: HarmTerm;
  readonly leg: { readonly fromDay: number; readonly toDay: number };
}

/** Why a pot is carried, in code and numbers, and the share of the cloud in which it comes about. */
export function carryReason(context: PlanContext, away: Away): { reason: Reason; shareFrac: number } {
  switch (away.term) {
    case "cold":
      return coldNight(context, away);
    case "wind":
      return gusts(away);
    case "heat":
      return heat(context, away);
    case "wet-wound":
      return freshRoots(context, away);
    default:
      return waterlog(context, away);
  }
}

function coldNight({ size }: PlanContext, { study, leg }: Away) {
  const limitC = study.now.values.damageC;
  const values = lowestOver(study.home.at.nightMinC, { size, ...leg });
  const sample = { values, weightFrac: even(size) };
  const coldestC = roundTo(quantilesOf(sample, [0.5])[0]!, 0.1);
  return {
    reason: { code: "cold-night" as const, numbers: { coldestC, limitC } },
    shareFrac: shareWhere(sample, (minC) => minC < limitC),
  };
}

function gusts({ study, leg }: Away) {
  const limitMPerS = tipMPerS(study.stander);
  let gustMPerS = 0;
  for (let d = leg.fromDay; d < leg.toDay; d++) gustMPerS = Math.max(gustMPerS, study.home.at.gustMPerS[d]!);
  return {
    reason: {
      code: "gusts" as const,
      numbers: { gustMPerS: roundTo(gustMPerS, 0.1), limitMPerS: roundTo(limitMPerS, 0.1) },
    },
    shareFrac: tippedShare(gustMPerS, limitMPerS),
  };
}

function heat({ days, size }: PlanContext, { study, leg }: Away) {
  const limitC = heatLimitC(study.stander);
  const { tempC } = study.home.at.forcing;
  const values = new Float64Array(size).fill(Number.NEGATIVE_INFINITY);
  for (let hour = days[leg.fromDay]!.fromHour; hour < days[leg.toDay - 1]!.toHour; hour++) {
    for (let m = 0; m < size; m++) values[m] = Math.max(values[m]!, tempC[hour * size + m]!);
  }
  const sample = { values, weightFrac: even(size) };
  const hottestC = roundTo(quantilesOf(sample, [0.5])[0]!, 0.1);
  return {
    reason: { code: "heat-and-sun" as const, numbers: { hottestC, limitC } },
    shareFrac: shareWhere(sample, (maxC) => maxC > limitC),
  };
}

function freshRoots(context: PlanContext, away: Away) {
  const { rainMm, shareFrac } = rainOver(context, away);
  const untilDay = calendarDay(away.study.now.aftercare!.dryUntilUtcMs, context.site.zone);
  return { reason: { code: "rain-on-fresh-roots" as const, numbers: { rainMm, untilDay } }, shareFrac };
}

function waterlog(context: PlanContext, away: Away) {
  const { rainMm, shareFrac } = rainOver(context, away);
  const wetBaseHours = Math.round(away.study.outlook.wetBaseHours.mid);
  return {
    reason: {
      code: "rain-would-waterlog" as const,
      numbers: { rainMm, wetBaseHours, standsHours: away.study.now.values.wetBaseHours },
    },
    shareFrac,
  };
}

/** Rain at home over the days away: what a wet course brings, and the share of courses that bring any. */
function rainOver({ size }: PlanContext, { study, leg }: Away): { rainMm: number; shareFrac: number } {
  const values = new Float64Array(size);
  for (let d = leg.fromDay; d < leg.toDay; d++) {
    for (let m = 0; m < size; m++) values[m]! += study.home.at.rainMm[d * size + m]!;
  }
  const sample = { values, weightFrac: even(size) };
  const [mid, high] = quantilesOf(sample, [0.5, 0.9]);
  const shown = mid! >= 0.5 ? mid! : high!;
  return { rainMm: roundTo(shown, shown < 10 ? 0.1 : 1), shareFrac: shareWhere(sample, (mm) => mm >= 0.5) };
}

function lowestOver(
  column: Float64Array,
  span: { size: number; fromDay: number; toDay: number },
): Float64Array {
  const lowest = new Float64Array(span.size).fill(Number.POSITIVE_INFINITY);
  for (let d = span.fromDay; d < span.toDay; d++) {
    for (let m = 0; m < span.size; m++) lowest[m] = Math.min(lowest[m]!, column[d * span.size + m]!);
  }
  return lowest;
}

function even(size: number): Float64Array {
  return new Float64Array(size).fill(1 / size);
}
