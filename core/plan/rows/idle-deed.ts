import { calendarDay } from "../../site/local-days.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { isFull, type WaterChoice } from "../choice/water-choice.ts";
import type { Deed, Reason } from "../deed.ts";
import { refillFracNow } from "../harm/refill-point.ts";
import { standsDays } from "../harm/thirst.ts";
import type { PlanContext } from "../plan-context.ts";
import { foundWetterUtcMs } from "../trouble/found-wetter.ts";
import { coldAhead } from "./cold-ahead.ts";
import { confidenceOf } from "./confidence-of.ts";
import { evenly, leftFracNow, rainFigureMm, sumOver } from "./day-figures.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf, shareWhere } from "./spread-of.ts";

/** Share of what is missing that rain must bring for it to be the reason. Chosen by us. */
const RAIN_DOES_IT_FRAC = 0.3;

/** Rain that is felt at all, mm. */
const FELT_MM = 0.5;

/** How sure it is that a pot found wet should be left: somebody looked, yet no version explains it. Chosen by us. */
const FOUND_WETTER_SHARE = 0.7;

/** The deed most often right: leave it alone, and why that is enough. */
export function idleDeed(context: PlanContext, study: PotStudy, water: WaterChoice): Deed {
  const reason = idleReason(context, study, water);
  return {
    action: "none",
    reason,
    harmAvoided: 0,
    confidence: confidenceOf(idleShareFrac(context, { study, water, reason })),
  };
}

/** Share of the cloud in which it is right to leave the pot alone today, for the reason that is told. */
function idleShareFrac(
  { size, days }: PlanContext,
  { study, water, reason }: { study: PotStudy; water: WaterChoice; reason: Reason },
): number {
  if (reason.code === "rain-will-do") {
    const rain = { values: rainUntilTomorrow({ size, days }, study), weightFrac: evenly(size) };
    return shareWhere(rain, (rainMm) => rainMm >= FELT_MM);
  }
  if (reason.code === "found-wetter") return FOUND_WETTER_SHARE;
  if (water.deed === "hold") return water.rightShareFrac;
  return Math.max(1 - water.dueShareFrac, water.canWaitShareFrac);
}

function idleReason(context: PlanContext, study: PotStudy, water: WaterChoice): Reason {
  const { outlook, now } = study;
  const leftFrac = leftFracNow(now);
  const foundUtcMs = foundWetterUtcMs(now, context.nowUtcMs);
  if (foundUtcMs !== null) {
    return { code: "found-wetter", numbers: { foundDay: calendarDay(foundUtcMs, context.site.zone) } };
  }
  if (context.hourCount === 0) return { code: "weather-unknown", numbers: { leftFrac } };
  if (wouldBeDue(study, { leftFrac, water }) && water.rainReliefFrac >= RAIN_DOES_IT_FRAC) {
    return { code: "rain-will-do", numbers: { rainMm: rainComing(context, study), leftFrac } };
  }
  if (water.deed === "hold") return holdReason(study, leftFrac);
  if (now.rest.restingShareFrac > 0.5) {
    return { code: "resting", numbers: { leftFrac, restingFrac: roundTo(now.rest.restingShareFrac, 0.01) } };
  }
  if (water.dueShareFrac >= 0.5 && !isFull(now)) {
    return { code: "stands-drought", numbers: { leftFrac, standsDays: Math.round(standsDays(now)) } };
  }
  if (outlook.daysToRefill === null) return { code: "still-wet", numbers: { leftFrac } };
  return { code: "has-enough", numbers: { leftDays: Math.floor(outlook.daysToRefill.mid), leftFrac } };
}

/** Whether water would be due by tomorrow's round if no rain came. */
function wouldBeDue({ now, here }: PotStudy, of: { leftFrac: number; water: WaterChoice }): boolean {
  const refill = refillFracNow(now);
  const usedFrac = (here.pass.used[0] ?? 0) * (1 - refill);
  return of.water.dueShareFrac >= 0.5 || of.leftFrac - usedFrac <= refill;
}

/** Thirsty by its refill point, but better left as it is. */
function holdReason(study: PotStudy, leftFrac: number): Reason {
  const { d, figures } = coldAhead(study.now, study.here.at);
  if (figures.sure === "no") return { code: "still-wet", numbers: { leftFrac } };
  return {
    code: "cold-nights-hold-water",
    numbers: { ...figures, coldDay: study.here.at.days[d]!.day, leftFrac },
  };
}

/** Rain that reaches the pot until the end of tomorrow, by member. */
function rainUntilTomorrow({ size, days }: Pick<PlanContext, "size" | "days">, { here }: PotStudy) {
  return sumOver(here.at.rainMm, { size, fromDay: 0, toDay: Math.min(2, days.length) });
}

/** Middle of that rain. */
function rainComing(context: PlanContext, study: PotStudy): number {
  const { size } = context;
  const values = rainUntilTomorrow(context, study);
  return rainFigureMm(quantilesOf({ values, weightFrac: evenly(size) }, [0.5])[0]!);
}
