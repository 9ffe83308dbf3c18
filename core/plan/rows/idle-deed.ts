import type { PotStudy } from "../choice/pot-study.ts";
import type { WaterChoice } from "../choice/water-choice.ts";
import { standsDays } from "../harm/thirst.ts";
import type { Deed, Reason } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { confidenceOf } from "./confidence-of.ts";
import { coldestThree, evenly, leftFracNow, rainFigureMm, sumOver } from "./day-figures.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf } from "./spread-of.ts";
import { coldLimitC } from "./water-deed.ts";

/** Share of what is missing that rain must bring for it to be the reason. Chosen by us. */
const RAIN_DOES_IT_FRAC = 0.3;

/** The deed most often right: leave it alone, and why that is enough. */
export function idleDeed(context: PlanContext, study: PotStudy, water: WaterChoice): Deed {
  return {
    action: "none",
    reason: idleReason(context, study, water),
    harmAvoided: 0,
    confidence: confidenceOf(water.deed === "hold" ? water.rightShareFrac : water.canWaitShareFrac),
  };
}

function idleReason(context: PlanContext, study: PotStudy, water: WaterChoice): Reason {
  const { outlook, now } = study;
  const leftFrac = leftFracNow(now);
  if (context.hourCount === 0) return { code: "weather-unknown", numbers: { leftFrac } };
  if (water.dueShareFrac >= 0.5 && water.rainReliefFrac >= RAIN_DOES_IT_FRAC) {
    return { code: "rain-will-do", numbers: { rainMm: rainComing(context, study), leftFrac } };
  }
  if (water.deed === "hold") return holdReason(study, leftFrac);
  if (now.rest.restingShareFrac > 0.5) {
    return { code: "resting", numbers: { leftFrac, restingFrac: roundTo(now.rest.restingShareFrac, 0.01) } };
  }
  if (water.dueShareFrac >= 0.5) {
    return { code: "stands-drought", numbers: { leftFrac, standsDays: Math.round(standsDays(now)) } };
  }
  if (outlook.daysToRefill === null) return { code: "still-wet", numbers: { leftFrac } };
  return { code: "has-enough", numbers: { leftDays: Math.floor(outlook.daysToRefill.mid), leftFrac } };
}

/** Thirsty by its refill point, but better left as it is. */
function holdReason(study: PotStudy, leftFrac: number): Reason {
  const { d, nightC } = coldestThree(study.here.at);
  const limitC = coldLimitC(study, nightC);
  if (nightC >= study.now.values.cutWaterNightC) return { code: "still-wet", numbers: { leftFrac } };
  return {
    code: "cold-nights-hold-water",
    numbers: { nightC, limitC, coldDay: study.here.at.days[d]!.day, leftFrac },
  };
}

/** Middle of the rain that reaches the pot until the end of tomorrow. */
function rainComing({ size, days }: PlanContext, { here }: PotStudy): number {
  const values = sumOver(here.at.rainMm, { size, fromDay: 0, toDay: Math.min(2, days.length) });
  return rainFigureMm(quantilesOf({ values, weightFrac: evenly(size) }, [0.5])[0]!);
}
