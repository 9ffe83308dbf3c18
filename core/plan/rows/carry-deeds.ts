import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { CarryOption } from "../choice/carry-options.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { type Dangers, lastDangerHour, onsetHour } from "../days/onset.ts";
import { heatLimitC, tipMPerS } from "../harm/spot-harm.ts";
import type { HarmTerm } from "../harm/term.ts";
import type { Deed } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryReason } from "./carry-reason.ts";
import { confidenceOf } from "./confidence-of.ts";
import { roundTo } from "./round-to.ts";

/** How far ahead a carry is told without a day before which it need not be done. Chosen by us: a storm of tomorrow afternoon is in this morning's round. */
const NOTICE_H = 36;

/** One run of days spent away or at home, begun by a carry. */
interface Leg {
  readonly fromDay: number;
  /** Exclusive. */
  readonly toDay: number;
  readonly away: boolean;
}

/** The carries of a chosen way, in order. */
export function carryDeeds(context: PlanContext, study: PotStudy, option: CarryOption): Deed[] {
  const startsAway = study.here !== study.home;
  const legs = legsOf(option.days);
  return legs.flatMap((leg, i) => {
    if (i === 0 && leg.away === startsAway) return [];
    return [leg.away ? carryIn(context, { study, option, leg }) : carryOut(context, { study, option, leg })];
  });
}

function legsOf(days: readonly boolean[]): Leg[] {
  const legs: Leg[] = [];
  for (const [d, away] of days.entries()) {
    const last = legs.at(-1);
    if (last !== undefined && last.away === away) legs[legs.length - 1] = { ...last, toDay: d + 1 };
    else legs.push({ fromDay: d, toDay: d + 1, away });
  }
  return legs;
}

function carryIn(context: PlanContext, leg: { study: PotStudy; option: CarryOption; leg: Leg }): Deed {
  const { study, option } = leg;
  const saved = savedByTerm(option, leg.leg);
  const worst = saved[0]!.term;
  const hour = carryInHour(context, { study, term: worst, day: leg.leg.fromDay });
  const by = context.startUtcMs + hour * HOUR_MS;
  const soon = hour < NOTICE_H;
  const first = context.days[leg.leg.fromDay]!.workHours[0];
  const { reason, shareFrac } = carryReason(context, { study, term: worst, leg: leg.leg });
  return {
    action: "carry-in",
    toSpotId: option.away.spot.id,
    ...(soon || first === undefined ? {} : { from: instantOf(context.startUtcMs + first * HOUR_MS) }),
    by: instantOf(by),
    until: context.days[leg.leg.toDay - 1]!.day,
    reason,
    harmAvoided: roundTo(sum(saved), 0.0001),
    confidence: confidenceOf(shareFrac),
    lift: study.lift,
  };
}

/** By this hour the pot must be in: the last working hour of the day that ends before the onset. */
function carryInHour(context: PlanContext, input: { study: PotStudy; term: HarmTerm; day: number }): number {
  const { study } = input;
  const day = context.days[input.day]!;
  const onset = onsetHour(study.home.at, input.day, dangersOf(study, input.term)) ?? day.toHour;
  const before = day.workHours.filter((hour) => hour + 1 <= onset);
  return (before.at(-1) ?? day.workHours[0] ?? day.fromHour) + 1;
}

/** What the onset is looked for in: the danger that the carry is for. */
function dangersOf(study: PotStudy, term: HarmTerm): Dangers {
  if (term === "cold") return { belowC: study.now.values.damageC };
  if (term === "wind") return { tipMPerS: tipMPerS(study.stander) };
  if (term === "heat") return { aboveC: heatLimitC(study.stander) };
  return { rain: true };
}

function carryOut(context: PlanContext, input: { study: PotStudy; option: CarryOption; leg: Leg }): Deed {
  const { study, option, leg } = input;
  const day = context.days[leg.fromDay]!;
  const nightBefore =
    leg.fromDay === 0 ? -1 : (lastDangerHour(study.home.at, leg.fromDay - 1, everyDanger(study)) ?? -1);
  const hours = day.workHours.filter((hour) => hour > nightBefore && (leg.fromDay > 0 || hour >= 0));
  const first = hours[0] ?? day.workHours.at(-1) ?? day.fromHour;
  const last = (day.workHours.at(-1) ?? first) + 1;
  const coldest = study.outlook.coldestC;
  return {
    action: "carry-out",
    toSpotId: study.home.at.spot.id,
    from: instantOf(Math.max(context.nowUtcMs, context.startUtcMs + first * HOUR_MS)),
    by: instantOf(context.startUtcMs + last * HOUR_MS),
    reason: {
      code: "danger-past",
      numbers: {
        coldestC: homeColdestC(context, { study, leg }) ?? coldest.mid,
        limitC: study.now.values.damageC,
      },
    },
    harmAvoided: roundTo(Math.max(0, sum(savedByTerm(option, leg))), 0.0001),
    confidence: confidenceOf(calmShare(context, { study, leg })),
    lift: study.lift,
  };
}

function everyDanger(study: PotStudy): Dangers {
  return { belowC: study.now.values.damageC + 1, tipMPerS: tipMPerS(study.stander) };
}

/** Middle of the cloud's coldest night at home while the pot is to stand there. */
function homeColdestC({ size }: PlanContext, { study, leg }: { study: PotStudy; leg: Leg }): number | null {
  const { nightMinC } = study.home.at;
  const coldest = Array.from({ length: size }, (_, m) => {
    let minC = Number.POSITIVE_INFINITY;
    for (let d = leg.fromDay; d < leg.toDay; d++) minC = Math.min(minC, nightMinC[d * size + m]!);
    return minC;
  }).sort((a, b) => a - b);
  const mid = coldest[Math.floor(size / 2)]!;
  return Number.isFinite(mid) ? roundTo(mid, 0.1) : null;
}

/** Share of the cloud in which no night of the stay at home does damage. */
function calmShare({ size }: PlanContext, { study, leg }: { study: PotStudy; leg: Leg }): number {
  const { nightMinC } = study.home.at;
  let calm = 0;
  for (let m = 0; m < size; m++) {
    let hurt = false;
    for (let d = leg.fromDay; d < leg.toDay; d++) {
      if (nightMinC[d * size + m]! < study.now.values.damageC) hurt = true;
    }
    if (!hurt) calm++;
  }
  return calm / size;
}

/** What the days of a leg save against spending them at the other place, largest first. */
function savedByTerm({ costs }: CarryOption, leg: Leg): { term: HarmTerm; harm: number }[] {
  const [spent, instead] = leg.away ? [costs.away, costs.home] : [costs.home, costs.away];
  const terms = [...new Set([...Object.keys(spent), ...Object.keys(instead)])] as HarmTerm[];
  return terms
    .map((term) => {
      let harm = 0;
      for (let d = leg.fromDay; d < leg.toDay; d++)
        harm += (instead[term]?.[d] ?? 0) - (spent[term]?.[d] ?? 0);
      return { term, harm };
    })
    .sort((a, b) => b.harm - a.harm || (a.term < b.term ? -1 : 1));
}

function sum(parts: readonly { harm: number }[]): number {
  return parts.reduce((total, { harm }) => total + harm, 0);
}
