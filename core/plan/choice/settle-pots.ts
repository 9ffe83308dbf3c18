import type { PotId } from "../../pot/pot.ts";
import type { PlanContext } from "../plan-context.ts";
import { along } from "./along.ts";
import { choosePlaces, type Place } from "./choose-places.ts";
import type { PotStudy } from "./pot-study.ts";
import { type RolledCourse, rollCourse, stayingAt } from "./roll-course.ts";
import { type WaterChoice, waterChoice } from "./water-choice.ts";

/** Where a pot spends its days and what the can does there. */
export interface Settled extends Place {
  readonly water: WaterChoice;
  /** Harm by way of water along the way it goes, where that was rolled out. */
  readonly harmOnWay: RolledCourse["harm"] | null;
}

/** Places first, as room is shared; then the can for every pot that is due and may move, along the way it goes. */
export function settlePots(context: PlanContext, studies: readonly PotStudy[]): Map<PotId, Settled> {
  const places = choosePlaces(context, studies);
  return new Map(
    studies.map((study) => {
      const place = places.get(study.now.pot.id)!;
      return [study.now.pot.id, { ...place, ...waterOn(context, study, place) }];
    }),
  );
}

/**
 * The can for a pot on its way. Where it stands decides whether water is due today; whether it is then given is
 * weighed along the way.
 */
function waterOn(
  context: PlanContext,
  study: PotStudy,
  { chosen }: Place,
): Pick<Settled, "water" | "harmOnWay"> {
  if (study.waterHere !== null) return { water: study.waterHere, harmOnWay: null };
  const { now, stander, home, here } = study;
  const moves = chosen !== null && chosen.carries > 0;
  const doings = moves ? along(context, { stander, home: home.at, option: chosen }) : stayingAt(here.at);
  const rolled = rollCourse(context, { now, doings, scratch: "kept" });
  return { water: waterChoice(context, { now, doings, rolled }), harmOnWay: rolled.harm };
}
