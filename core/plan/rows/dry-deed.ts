import { calendarDay } from "../../site/local-days.ts";
import type { CalendarDay } from "../../site/site.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { WaterChoice } from "../choice/water-choice.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";
import { coldAhead } from "./cold-ahead.ts";
import { confidenceOf } from "./confidence-of.ts";
import { leftFracNow } from "./day-figures.ts";
import { harmFigure } from "./harm-figure.ts";
import { roundTo } from "./round-to.ts";
import { meanOf } from "./spread-of.ts";
import { daysSince, harmDoneBy } from "./water-deed.ts";

/** Keeping dry after planting is common practice, not measured; so it is called likely and no more. */
const AFTER_PLANTING_SHARE = 0.79;
/** From here on it is said that cool weather holds up the closing of the cuts, times. Chosen by us. */
const SLOWED = 1.5;
/**
 * Shares of the cloud that must be thirsty, and better off dry, for the grower to be told not to water; otherwise it
 * is enough not to ask for water. Chosen by us.
 */
const TEMPTING_SHARE = 0.5;
const BETTER_DRY_SHARE = 0.4;

/** Keep dry: after planting while the cuts close, or because water would harm more than thirst. Null otherwise. */
export function dryDeed(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed | null {
  if (study.now.aftercare?.stage === "dry") return afterPlanting(context, study, choice);
  if (choice.deed !== "hold" || choice.dueShareFrac < TEMPTING_SHARE) return null;
  if (choice.rightShareFrac < BETTER_DRY_SHARE) return null;
  const { harmDone } = choice;
  return harmDone["wet-cold"] >= harmDone["wet-roots"]
    ? inTheCold(context, study, choice)
    : whileWet(context, study, choice);
}

function afterPlanting(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed {
  const care = study.now.aftercare!;
  const untilDay = calendarDay(care.dryUntilUtcMs, context.site.zone);
  return {
    action: "keep-dry",
    until: untilDay,
    reason: {
      code: "freshly-planted-dry",
      numbers: {
        sinceDays: daysSince(context, study.now.plantedUtcMs),
        untilDay,
        healedFrac: roundTo(care.healedFrac, 0.01),
        ...(care.soakedUtcMs === null ? {} : { soakedDay: calendarDay(care.soakedUtcMs, context.site.zone) }),
        ...(care.slowedBy < SLOWED ? {} : { slowedBy: roundTo(care.slowedBy, 0.5) }),
      },
    },
    harmAvoided: harmFigure(harmDoneBy(choice) - choice.thirstSaved),
    confidence: confidenceOf(AFTER_PLANTING_SHARE),
  };
}

function inTheCold(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed {
  const { d, figures } = coldAhead(study.now, study.here.at);
  return {
    action: "keep-dry",
    until: lastCoolDay(context, study),
    reason: {
      code: "cold-nights-hold-water",
      numbers: {
        ...figures,
        coldDay: context.days[d]!.day,
        leftFrac: leftFracNow(study.now),
      },
    },
    harmAvoided: harmFigure(harmDoneBy(choice) - choice.thirstIfNot),
    confidence: confidenceOf(choice.rightShareFrac),
  };
}

function whileWet({ days }: PlanContext, study: PotStudy, choice: WaterChoice): Deed {
  return {
    action: "keep-dry",
    until: days[Math.min(1, days.length - 1)]!.day,
    reason: { code: "still-wet", numbers: { leftFrac: leftFracNow(study.now) } },
    harmAvoided: harmFigure(harmDoneBy(choice) - choice.thirstIfNot),
    confidence: confidenceOf(choice.rightShareFrac),
  };
}

/** Last day of the horizon whose three-night mean is still below the line for cutting water. */
function lastCoolDay({ days, size }: PlanContext, { now, here }: PotStudy): CalendarDay {
  let until = days[0]!.day;
  for (const [d, day] of days.entries()) {
    const meanC = meanOf({ values: here.at.threeNightC, offset: d * size, weightFrac: now.cloud.weightFrac });
    if (meanC < now.values.cutWaterNightC) until = day.day;
  }
  return until;
}
