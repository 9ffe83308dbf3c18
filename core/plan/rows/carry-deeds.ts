import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { carryInSpan, carryOutSpan } from "../choice/carry-hours.ts";
import type { CarryOption } from "../choice/carry-options.ts";
import { type Leg, legsOf, purposeOf, purposesOf, savedByTerm } from "../choice/legs.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryReason } from "./carry-reason.ts";
import { confidenceOf } from "./confidence-of.ts";
import { evenly, lowestOver } from "./day-figures.ts";
import { harmFigure } from "./harm-figure.ts";
import { spanOfDeed } from "./notice.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf, shareWhere } from "./spread-of.ts";

interface Carry {
  readonly study: PotStudy;
  readonly option: CarryOption;
  readonly leg: Leg;
}

/** The carries of a chosen way, in order. */
export function carryDeeds(context: PlanContext, study: PotStudy, option: CarryOption): Deed[] {
  const startsAway = study.here !== study.home;
  return legsOf(option.days).flatMap((leg, i) => {
    if (i === 0 && leg.away === startsAway) return [];
    const deed = leg.away
      ? carryIn(context, { study, option, leg })
      : carryOut(context, { study, option, leg });
    return deed === null ? [] : [deed];
  });
}

function carryIn(context: PlanContext, carry: Carry): Deed | null {
  const { study, option, leg } = carry;
  const term = purposeOf(option, leg);
  const terms = purposesOf(option, leg);
  const place = { stander: study.stander, homeAt: study.home.at, day: leg.fromDay, terms };
  const span = carryInSpan(context, place);
  if (span === null) return null;
  const { reason, shareFrac } = carryReason(context, { study, term, leg });
  return {
    action: "carry-in",
    toSpotId: option.away.spot.id,
    ...spanOfDeed(context, span),
    until: context.days[leg.toDay - 1]!.day,
    reason,
    harmAvoided: savedBy(option, leg),
    confidence: confidenceOf(shareFrac),
    lift: study.lift,
  };
}

function carryOut(context: PlanContext, { study, option, leg }: Carry): Deed | null {
  const place = { stander: study.stander, homeAt: study.home.at, day: leg.fromDay };
  const span = carryOutSpan(context, place);
  if (span === null) return null;
  const { damageC } = study.now.values;
  const { size } = context;
  const coldest = { values: lowestOver(study.home.at.nightMinC, { size, ...leg }), weightFrac: evenly(size) };
  return {
    action: "carry-out",
    toSpotId: study.home.at.spot.id,
    from: instantOf(Math.max(context.nowUtcMs, context.startUtcMs + span.fromHour * HOUR_MS)),
    by: instantOf(context.startUtcMs + span.byHour * HOUR_MS),
    reason: {
      code: "danger-past",
      numbers: { coldestC: roundTo(quantilesOf(coldest, [0.5])[0]!, 0.1), limitC: damageC },
    },
    harmAvoided: savedBy(option, leg),
    confidence: confidenceOf(shareWhere(coldest, (minC) => minC >= damageC)),
    lift: study.lift,
  };
}

function savedBy(option: CarryOption, leg: Leg): number {
  return harmFigure(savedByTerm(option, leg).reduce((sum, { harm }) => sum + harm, 0));
}
