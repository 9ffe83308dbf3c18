import type { Place } from "../choice/choose-places.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Deed, PotPlan, Reason } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryDeeds } from "./carry-deeds.ts";
import { confidenceOf } from "./confidence-of.ts";
import { leftNow, waterDeed } from "./water-deed.ts";

/** One pot's line of the plan: its first deed, what follows, and how it would fare if nothing were done. */
export function potRow(context: PlanContext, study: PotStudy, place: Place): PotPlan {
  const carries = place.chosen === null ? [] : carryDeeds(context, study, place.chosen);
  const water = waterDeed(context, study, study.waterHere);
  const deeds = [...(water === null ? [] : [water]), ...carries].sort(byTime);
  const [first = idle(study), ...then] = deeds;
  const { pot } = study.now;
  return {
    ...first,
    potId: pot.id,
    count: pot.count ?? 1,
    spotId: study.now.spotId,
    then,
    outlook: study.outlook,
  };
}

function byTime(a: Deed, b: Deed): number {
  return rank(a).localeCompare(rank(b));
}

/** What is due first stands first; keeping dry has no hour and comes before all. */
function rank(deed: Deed): string {
  return deed.action === "keep-dry" ? "" : (deed.by ?? deed.from ?? "");
}

function idle(study: PotStudy): Deed {
  return {
    action: "none",
    reason: idleReason(study),
    harmAvoided: 0,
    confidence: confidenceOf(idleShare(study)),
  };
}

function idleReason(study: PotStudy): Reason {
  const { outlook, now, waterHere } = study;
  const leftFrac = leftNow(study);
  if (waterHere.dueShareFrac > 0.5 && waterHere.rainReliefFrac > 0.3) {
    return {
      code: "rain-will-do",
      numbers: { rainMm: meanRain(study), reliefFrac: waterHere.rainReliefFrac },
    };
  }
  if (now.rest.restingShareFrac > 0.5) return { code: "resting", numbers: { leftFrac } };
  if (outlook.daysToRefill === null) return { code: "still-wet", numbers: { leftFrac } };
  return { code: "has-enough", numbers: { leftDays: Math.floor(outlook.daysToRefill.mid), leftFrac } };
}

function meanRain({ here }: PotStudy): number {
  let sum = 0;
  const { size, rainMm } = here.at;
  for (let i = 0; i < Math.min(2 * size, rainMm.length); i++) sum += rainMm[i]! / size;
  return Math.round(sum * 10) / 10;
}

/** Share of the cloud in which leaving the pot alone today is right: it does not run short before tomorrow. */
function idleShare({ waterHere }: PotStudy): number {
  return waterHere.deed === "hold" ? 1 : 1 - waterHere.dueShareFrac * (1 - waterHere.rainReliefFrac);
}
