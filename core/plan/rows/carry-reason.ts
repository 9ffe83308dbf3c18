import { instantOf } from "../../site/instant.ts";
import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Reason } from "../deed.ts";
import { WAITS_FRAC } from "../harm/gloom.ts";
import { HAIL_MEETS_FRAC } from "../harm/hail.ts";
import { heatLimitC, tipMPerS } from "../harm/spot-harm.ts";
import type { HarmTerm } from "../harm/term.ts";
import { tippedShare } from "../harm/toppling.ts";
import type { PlanContext } from "../plan-context.ts";
import { coldAhead } from "./cold-ahead.ts";
import {
  coldestNight,
  type DaySpanOf,
  evenly,
  hottestOver,
  leftFracNow,
  lowestOver,
  rainFigureMm,
  sumOver,
} from "./day-figures.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf, shareWhere } from "./spread-of.ts";

/** Rain that is felt at all, mm over the days in question. */
const FELT_MM = 0.5;

export interface Threat {
  readonly study: PotStudy;
  readonly term: HarmTerm;
  readonly leg: DaySpanOf;
  /** What is done keeps rain off and nothing else, so only rain can be its reason. */
  readonly keepsRainOff?: boolean;
}

interface Threatened {
  readonly reason: Reason;
  readonly shareFrac: number;
}

/** What threatens a pot at home on some days, in code and numbers, and the share of the cloud in which it comes about. */
export function carryReason(context: PlanContext, threat: Threat): Threatened {
  switch (threat.term) {
    case "cold":
      return coldNight(context, threat);
    case "wind":
      return gusts(threat);
    case "hail":
      return hail(context, threat);
    case "heat":
      return heat(context, threat);
    case "wet-wound":
      return freshRoots(context, threat);
    case "wet-cold":
      return wetBeforeCold(context, threat);
    case "gloom":
      return tooDim(context, threat);
    default:
      return waterlog(context, threat);
  }
}

function coldNight({ days, size }: PlanContext, { study, leg }: Threat): Threatened {
  const { damageC: limitC, killC } = study.now.values;
  const nights = study.home.at.nightMinC;
  const sample = { values: lowestOver(nights, { size, ...leg }), weightFrac: evenly(size) };
  const d = coldestNight(nights, { size, ...leg });
  const untilThen = lowestOver(nights, { size, fromDay: leg.fromDay, toDay: d + 1 });
  const [low, mid] = quantilesOf({ ...sample, values: untilThen }, [0.1, 0.5]);
  const sure = mid! < limitC ? "yes" : "no";
  const coldestC = roundTo(sure === "yes" ? mid! : low!, 0.1);
  return {
    reason: {
      code: "cold-night",
      numbers: {
        coldestC,
        limitC,
        sure,
        ...(d > leg.fromDay ? { coldDay: days[d]!.day } : {}),
        ...(mid! <= killC ? { kills: "yes" } : {}),
      },
    },
    shareFrac: shareWhere(sample, (minC) => minC < limitC),
  };
}

function gusts({ study, leg }: Threat): Threatened {
  const limitMPerS = tipMPerS(study.stander);
  let gustMPerS = 0;
  for (let d = leg.fromDay; d < leg.toDay; d++) gustMPerS = Math.max(gustMPerS, study.home.at.gustMPerS[d]!);
  return {
    reason: {
      code: "gusts",
      numbers: { gustMPerS: roundTo(gustMPerS, 0.1), limitMPerS: roundTo(limitMPerS, 0.1) },
    },
    shareFrac: tippedShare(gustMPerS, limitMPerS),
  };
}

function heat({ days, size }: PlanContext, { study, leg }: Threat): Threatened {
  const limitC = heatLimitC(study.stander);
  const values = hottestOver(study.home.at, {
    fromHour: days[leg.fromDay]!.fromHour,
    toHour: days[leg.toDay - 1]!.toHour,
  });
  const sample = { values, weightFrac: evenly(size) };
  const [mid, high] = quantilesOf(sample, [0.5, 0.9]);
  const hottestC = roundTo(mid! > limitC ? mid! : high!, 0.1);
  return {
    reason: { code: "heat-and-sun", numbers: { hottestC, limitC } },
    shareFrac: shareWhere(sample, (maxC) => maxC > limitC),
  };
}

/** Light of the brightest of its days against what growth needs; dim where a plant lives on what it has stored. */
function tooDim({ size }: PlanContext, { study, leg }: Threat): Threatened {
  const { lightMjPerM2 } = study.home.at;
  const needMj = study.now.values.lightMjPerM2PerDay;
  const dimmed = lightMjPerM2.map((mj) => -mj / needMj);
  const sample = { values: lowestOver(dimmed, { size, ...leg }), weightFrac: evenly(size) };
  return {
    reason: { code: "too-dim", numbers: { lightFrac: roundTo(-quantilesOf(sample, [0.5])[0]!, 0.01) } },
    shareFrac: shareWhere(sample, (dim) => -dim < WAITS_FRAC),
  };
}

function hail({ days, startUtcMs }: PlanContext, { leg }: Threat): Threatened {
  const hour = days.slice(leg.fromDay, leg.toDay).find(({ hailHour }) => hailHour !== null)!.hailHour!;
  const hailAt = instantOf(startUtcMs + hour * HOUR_MS);
  return { reason: { code: "hail", numbers: { hailAt } }, shareFrac: HAIL_MEETS_FRAC };
}

function freshRoots(context: PlanContext, threat: Threat): Threatened {
  const { rainMm, shareFrac } = rainOver(context, threat);
  const untilDay = calendarDay(threat.study.now.aftercare!.dryUntilUtcMs, context.site.zone);
  return { reason: { code: "rain-on-fresh-roots", numbers: { rainMm, untilDay } }, shareFrac };
}

/** Wet and cold by the rain of those days; or by what is in the pot already, where most courses bring none. */
function wetBeforeCold(context: PlanContext, threat: Threat): Threatened {
  const { rainMm, shareFrac } = rainOver(context, threat);
  const { d, figures } = coldAhead(threat.study.now, threat.study.home.at, threat.leg.fromDay);
  if (shareFrac >= 0.5 || threat.keepsRainOff)
    return { reason: { code: "wet-before-cold", numbers: { rainMm, ...figures } }, shareFrac };
  const { threeNightC, size } = threat.study.home.at;
  const coldDay = context.days[d]!.day;
  const leftFrac = leftFracNow(threat.study.now);
  return {
    reason: { code: "cold-nights-hold-water", numbers: { ...figures, coldDay, leftFrac } },
    shareFrac: shareWhere(
      { values: threeNightC, offset: d * size, weightFrac: evenly(size) },
      (meanC) => meanC < figures.limitC,
    ),
  };
}

function waterlog(context: PlanContext, threat: Threat): Threatened {
  const { rainMm, shareFrac } = rainOver(context, threat);
  const { outlook, now } = threat.study;
  const numbers = {
    rainMm,
    wetBaseHours: Math.round(outlook.wetBaseHours.high),
    standsHours: now.values.wetBaseHours,
  };
  return { reason: { code: "rain-would-waterlog", numbers }, shareFrac };
}

/** Rain at home over the days: the middle of the cloud, or its wet end where the middle is dry; and who gets any. */
function rainOver({ size }: PlanContext, { study, leg }: Threat): { rainMm: number; shareFrac: number } {
  const sample = { values: sumOver(study.home.at.rainMm, { size, ...leg }), weightFrac: evenly(size) };
  const [mid, high] = quantilesOf(sample, [0.5, 0.9]);
  return {
    rainMm: rainFigureMm(mid! >= FELT_MM ? mid! : high!),
    shareFrac: shareWhere(sample, (mm) => mm >= FELT_MM),
  };
}
